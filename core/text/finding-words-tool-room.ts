import type { Words } from './finding-facts.ts';

type ToolRoomCode =
  | 'coupling_unknown'
  | 'reaction_unknown'
  | 'line_agreement_unknown'
  | 'stud_wider_than_bore'
  | 'stud_hits_head'
  | 'head_too_high'
  | 'counterhold_missing'
  | 'counterhold_does_not_fit'
  | 'coupling_differs'
  | 'pump_connections_few'
  | 'lines_disagree'
  | 'gauge_second_unit'
  | 'tool_due'
  | 'tool_in_case'
  | 'kit_reserved';

/** The words of findings about lines, room for the head, further wrenches, and what the tool room knows. */
export const TOOL_ROOM_WORDS: Words<ToolRoomCode> = {
  coupling_unknown: ({ parts }) => ({
    title: 'Couplings not known',
    detail: `No coupling is entered for ${parts.join(', ')}; whether the lines go together was not checked.`,
    remedy:
      'Enter the coupling’s name for each part, or couple the line up and let the tool retract once before the job.',
  }),
  reaction_unknown: ({ part }) => ({
    title: 'Force at the reaction point not known',
    detail: `How far from the nut’s axis the reaction member of ${part} bears is not known.`,
    remedy:
      'Measure from the nut’s axis to where the member bears, and enter it for the tool. The force there is the torque over that distance.',
  }),
  line_agreement_unknown: ({ wrenches }) => ({
    title: `${wrenches} wrenches on one pump: how far they may differ is not known`,
    detail:
      'One pressure serves all of them only where their certificates agree. The site has no limit entered for that.',
    remedy:
      'Enter “agreement of several tools on one pump” in the site’s rule for drive units, or use one wrench.',
  }),
  stud_wider_than_bore: ({ stud, bore }) => ({
    title: 'Stud wider than the head’s bore',
    detail: `Stud ${stud}, bore of the head ${bore}. The head does not go onto the nut.`,
    remedy: 'Choose a head with a wider bore.',
  }),
  stud_hits_head: ({ stands, room }) => ({
    title: 'Stud stands out farther than the head has room',
    detail: `The stud stands ${stands} out of the nut, the head has room for ${room}. The head would not sit on the nut.`,
    remedy:
      'Choose a head that is open through the back or has more room, or have the stud’s length checked.',
  }),
  head_too_high: ({ height, gap }) => ({
    title: 'Head higher than the free distance along the stud',
    detail: `Head ${height} high, free distance ${gap}.`,
    remedy: 'Choose a lower head.',
  }),
  counterhold_missing: () => ({
    title: 'No counterhold wrench chosen',
    detail:
      'What holds the far nut was not checked. A nut that turns with the stud takes load out of the reading.',
    remedy:
      'Choose the wrench that holds the far nut, and secure it: it moves until it lands and can trap a hand (caution on the card).',
  }),
  counterhold_does_not_fit: ({ opening, nut, sits }) => ({
    title: 'Counterhold wrench does not fit the nut',
    detail: `Opening ${opening}, nut ${nut} across flats: ${sits}.`,
    remedy: 'Choose a counterhold wrench of the nut’s size.',
  }),
  coupling_differs: ({ first, other, names }) => ({
    title: 'Couplings of the lines differ',
    detail: `${first} has the coupling “${names[0]}”, ${other} has “${names[1]}”.`,
    remedy: 'Choose parts of one coupling. Adapters that nobody has rated are no way out.',
  }),
  pump_connections_few: ({ pump, connections, wrenches }) => ({
    title: 'Pump has too few connections',
    detail: `${pump}: ${connections} ${connections === 1 ? 'wrench' : 'wrenches'} at once, ${wrenches} chosen.`,
    remedy: 'Choose a pump with more connections, or fewer wrenches.',
  }),
  lines_disagree: ({ pressure, torques, difference, limit }) => ({
    title: 'Wrenches on one pump differ too much',
    detail: `At ${pressure} their certificates give ${torques.join(', ')}: ${difference} apart, ${limit} allowed.`,
    remedy: 'Choose wrenches whose certificates agree, or turn with one wrench.',
  }),
  gauge_second_unit: ({ gauge, unit, also }) => ({
    title: 'Gauge with two units on its face',
    detail: `${gauge}: this card is in ${unit}, the face has ${also} as well.`,
    remedy: `Read the ring in ${unit}. A second person confirms unit and number before the first nut, or choose a gauge with one unit.`,
  }),
  tool_due: ({ part, what, state, reason, on, endsOn }) => ({
    title: `${what}: ${state === 'lapses' ? 'due before the job ends' : state}`,
    detail:
      state === 'lapses'
        ? `${part}: last good day ${on}, the job ends on ${endsOn}; ${reason}.`
        : `${part}: ${reason}.`,
    remedy: DUE_REMEDY[state],
  }),
  tool_in_case: ({ part, cases }) => ({
    title: 'Open case on a tool',
    detail: `${part}: ${cases.join(', ')} is not closed. Nobody can release this for a job.`,
    remedy: 'Choose another one, or have the case decided and closed.',
  }),
  kit_reserved: ({ part, kit, from, to, joints }) => ({
    title: 'Set aside for another job',
    detail: `${part} is in the kit “${kit}”, ${from} to ${to}${joints === 0 ? ', which names no joints' : ', which is not for this joint'}.`,
    remedy: 'Make sure with the tool room, or choose another one.',
  }),
};

const DUE_REMEDY = {
  overdue: 'Have it done and entered, or choose another one of its kind.',
  'not known': 'Not known is not a pass: have it done and entered, or enter what is missing.',
  lapses: 'Finish by that day, have it done before, or choose another one of its kind.',
} as const;
