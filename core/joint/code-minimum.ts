import { compute, type Outcome, positive, relation, rules, within } from '../findings/outcome.ts';

const MM = 0.001;
/** Basic width up to which the whole of it seats, in the standard's SI form; its inch form says 1/4 in. */
const FULL_WIDTH = 6 * MM;

/** How these loads may be used: they size the bolting, they don't make a tight joint. */
export const CODE_MINIMUM_USE = 'floor and cross-check; not an assembly target';

/** Contact geometry the code's widths are taken from, m. */
export type GasketContact =
  | {
      readonly kind: 'flat ring or spiral wound';
      readonly outside: number | null;
      readonly inside: number | null;
    }
  | { readonly kind: 'ring joint'; readonly pitchDiameter: number | null; readonly ringWidth: number | null };

/** Widths and reaction diameter, m. */
export interface SeatingWidths {
  /** N: contact width, or w: width of the ring. */
  readonly contactWidth: number;
  /** b0 */
  readonly basic: number;
  /** b */
  readonly effective: number;
  /** G */
  readonly reactionDiameter: number;
}

/** Bolt loads of the code, whole joint, N. */
export interface CodeMinimum extends SeatingWidths {
  readonly use: typeof CODE_MINIMUM_USE;
  /** H = (π/4)·G²·p */
  readonly endForce: number;
  /** Hp = 2·b·π·G·m·p */
  readonly gasketForce: number;
  readonly Wm1: number;
  readonly Wm2: number;
  readonly larger: 'Wm1' | 'Wm2';
  /** Larger of the two, per bolt. */
  readonly perBolt: number;
}

/**
 * Effective seating width.
 *
 * Equation: b = b0 for b0 ≤ 6 mm; b = 2.52·√b0 above, both in mm.
 * @param basic b0, m, above 0
 * @returns b, m
 * @example effectiveWidth(0.0127).value // 0.008981 m
 * @source ASME BPVC VIII-1, Appendix 2, Table 2-5.2 (from memory)
 */
export function effectiveWidth(basic: number | null): Outcome<number> {
  return compute(
    { basic: positive('b0', 'basic seating width, m', basic, 'measure the gasket contact') },
    (v) => effective(v.basic),
  );
}

function effective(basic: number): number {
  return basic <= FULL_WIDTH ? basic : 2.52 * Math.sqrt(basic / MM) * MM;
}

/**
 * Seating widths and the diameter the gasket reacts at.
 *
 * Equation: flat: b0 = N/2, N = (Dod − Did)/2; G = mean diameter for b0 ≤ 6 mm, else Dod − 2·b. Ring joint: b0 = w/8, G
 * = pitch diameter.
 * @param contact gasket contact with its diameters, m
 * @returns N or w, b0, b and G, m
 * @example seatingWidths({ kind: 'flat ring or spiral wound', outside: 0.3175, inside: 0.2667 }).value?.effective //
 * 0.008981 m
 * @source ASME BPVC VIII-1, Appendix 2, 2-3 and Table 2-5.2, sketches 1a and 6 (from memory)
 */
export function seatingWidths(contact: GasketContact): Outcome<SeatingWidths> {
  if (contact.kind === 'ring joint') {
    return compute(
      {
        width: positive('w', 'width of the ring, m', contact.ringWidth, 'take it from the ring table'),
        pitch: positive(
          'P',
          'pitch diameter of the ring, m',
          contact.pitchDiameter,
          'take it from the ring table',
        ),
      },
      (v) => {
        const basic = v.width / 8;
        return { contactWidth: v.width, basic, effective: effective(basic), reactionDiameter: v.pitch };
      },
    );
  }
  const { outside, inside } = contact;
  const least = inside === null || !Number.isFinite(inside) ? 0 : inside * (1 + 1e-9);
  return compute(
    {
      outside: within(
        'Dod',
        'outside diameter of the gasket contact, m, above the inside',
        outside,
        [least, 20],
        'measure the gasket contact',
      ),
      inside: positive(
        'Did',
        'inside diameter of the gasket contact, m',
        inside,
        'measure the gasket contact',
      ),
    },
    (v) => {
      const contactWidth = (v.outside - v.inside) / 2;
      const basic = contactWidth / 2;
      const b = effective(basic);
      const mean = (v.outside + v.inside) / 2;
      return {
        contactWidth,
        basic,
        effective: b,
        reactionDiameter: basic <= FULL_WIDTH ? mean : v.outside - 2 * b,
      };
    },
  );
}

/**
 * Bolt loads the code's design rules ask for: a floor under the target and a cross-check, never a target.
 *
 * Equation: Wm1 = (π/4)·G²·p + 2·b·π·G·m·p; Wm2 = π·b·G·y.
 * @param contact gasket contact, m
 * @param pressure design pressure p, Pa, at least 0
 * @param gasketFactor m, 1, at least 0
 * @param seatingStress y, Pa, at least 0
 * @param boltCount nb, whole, 1 to 400
 * @returns widths, parts and loads, N
 * @example codeMinimum({ kind: 'flat ring or spiral wound', outside: 0.3175, inside: 0.2667 }, 1.7237e6, 3, 68.95e6,
 * 12).value?.Wm1 // 208.9e3 N
 * @source ASME BPVC VIII-1, Appendix 2, equations (1) and (2) (second-hand)
 */
export function codeMinimum(
  contact: GasketContact,
  pressure: number | null,
  gasketFactor: number | null,
  seatingStress: number | null,
  boltCount: number | null,
): Outcome<CodeMinimum> {
  const widths = seatingWidths(contact);
  const loads = CODE_LOADS({
    pressure,
    m: gasketFactor,
    y: seatingStress,
    count: boltCount,
    // Widths that are not known are named by their own gaps.
    G: widths.value?.reactionDiameter ?? 0,
    b: widths.value?.effective ?? 0,
  });
  if (widths.value === null || loads.value === null) {
    return { value: null, missing: [...widths.missing, ...loads.missing] };
  }
  return { value: { use: CODE_MINIMUM_USE, ...widths.value, ...loads.value }, missing: [] };
}

const TABLE = 'take it from Table 2-5.1 or from the gasket maker, and say which';

const CODE_LOADS = relation(
  {
    pressure: rules.within('p', 'design pressure, Pa', [0, 1e9], 'enter the design pressure'),
    m: rules.within('m', 'gasket factor', [0, 20], TABLE),
    y: rules.within('y', 'seating stress of the code, Pa', [0, 5e9], TABLE),
    count: rules.whole('nb', 'number of bolts', [1, 400], 'count the bolts'),
    G: rules.within('G', 'reaction diameter, m', [0, 20], 'measure the gasket'),
    b: rules.within('b', 'effective seating width, m', [0, 2], 'measure the gasket'),
  },
  (v) => {
    const endForce = (Math.PI / 4) * v.G ** 2 * v.pressure;
    const gasketForce = 2 * v.b * Math.PI * v.G * v.m * v.pressure;
    const Wm1 = endForce + gasketForce;
    const Wm2 = Math.PI * v.b * v.G * v.y;
    const larger = Wm1 >= Wm2 ? ('Wm1' as const) : ('Wm2' as const);
    return { endForce, gasketForce, Wm1, Wm2, larger, perBolt: Math.max(Wm1, Wm2) / v.count };
  },
);

/**
 * Total root area of bolting the code asks for.
 *
 * Equation: Am = max(Wm1/Sb, Wm2/Sa).
 * @param minimum loads of `codeMinimum`
 * @param allowableHot Sb: allowable bolt stress at design temperature, Pa, above 0
 * @param allowableCold Sa: allowable bolt stress at assembly temperature, Pa, above 0
 * @returns Am, m²
 * @example codeBoltArea({ Wm1: 208900, Wm2: 582700 }, 172e6, 172e6).value // 0.003388 m²
 * @source ASME BPVC VIII-1, Appendix 2, 2-5(d) (from memory)
 */
export function codeBoltArea(
  minimum: Pick<CodeMinimum, 'Wm1' | 'Wm2'>,
  allowableHot: number | null,
  allowableCold: number | null,
): Outcome<number> {
  const code = 'take the allowable stress from the code edition in force';
  return compute(
    {
      hot: positive('Sb', 'allowable bolt stress at design temperature, Pa', allowableHot, code),
      cold: positive('Sa', 'allowable bolt stress at assembly temperature, Pa', allowableCold, code),
    },
    (v) => Math.max(minimum.Wm1 / v.hot, minimum.Wm2 / v.cold),
  );
}

/**
 * Bolt load the code designs the flange for at gasket seating.
 *
 * Equation: W = (Am + Ab)·Sa/2.
 * @param required Am, m², above 0
 * @param provided Ab: root area of all bolts together, m², above 0
 * @param allowableCold Sa: allowable bolt stress at assembly temperature, Pa, above 0
 * @returns W, N
 * @example codeSeatingLoad(0.0082047, 0.0146993, 600.9e6).value // 6.88e6 N
 * @source ASME BPVC VIII-1, Appendix 2, equation (5) (from memory)
 */
export function codeSeatingLoad(
  required: number | null,
  provided: number | null,
  allowableCold: number | null,
): Outcome<number> {
  return compute(
    {
      required: positive('Am', 'required bolt area, m²', required, 'compute it from Wm1 and Wm2'),
      provided: positive('Ab', 'root area of all bolts, m²', provided, 'choose thread and number of bolts'),
      cold: positive(
        'Sa',
        'allowable bolt stress at assembly temperature, Pa',
        allowableCold,
        'take the allowable stress from the code edition in force',
      ),
    },
    (v) => ((v.required + v.provided) * v.cold) / 2,
  );
}
