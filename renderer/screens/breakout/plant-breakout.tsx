import { useDeferredValue, useId, useState } from 'react';
import { type TemperatureBand, temperatureBand } from '../../../core/contract/forecast.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { LeakIndex } from '../leaks/leak-index.tsx';
import { OwnRecordSection } from './own-record-section.tsx';
import { RatioSection } from './ratio-section.tsx';

const ALL = { service: '', lubricant: '', batch: '', uses: '', band: null as TemperatureBand | null };

const WORDS = [
  ['service', 'Service', 'as the joints have it'],
  ['lubricant', 'Lubricant', 'as recorded when it was put on'],
  ['batch', 'Batch of the lubricant', 'its number'],
  ['uses', 'Uses of the studs', 'tightenings the register knows, a whole number'],
] as const;

const orAll = (text: string) => (text.trim() === '' ? null : text.trim());

/** Openings of the whole plant, looked at together by service, temperature, lubricant, batch and use of the studs. */
export function PlantBreakout() {
  const [only, setOnly] = useState(ALL);
  const { service, lubricant, batch, uses, band } = useDeferredValue(only);
  const counted = /^\d{1,3}$/.test(uses.trim());
  const badUses = uses.trim() !== '' && !counted;
  const base = useId();
  return (
    <Desk indexLabel="Leaks and joints" index={<LeakIndex />}>
      <Title
        name="Breakout"
        under="Every opening that was recorded, against the torque put on before it. Empty takes all."
      />
      <div className="filters no-print">
        {WORDS.map(([name, label, hint]) => (
          <div className="field" key={name}>
            <label htmlFor={`${base}-${name}`}>{label}</label>
            <input
              id={`${base}-${name}`}
              type="text"
              autoComplete="off"
              aria-describedby={`${base}-${name}-hint`}
              aria-invalid={name === 'uses' && badUses ? true : undefined}
              value={only[name]}
              onChange={({ target }) => setOnly({ ...only, [name]: target.value })}
            />
            <span className={name === 'uses' && badUses ? 'fault' : 'hint'} id={`${base}-${name}-hint`}>
              {name === 'uses' && badUses ? 'A whole number from 0 to 999; until then all are shown' : hint}
            </span>
          </div>
        ))}
        <div className="field">
          <label htmlFor={`${base}-band`}>Temperature of the service</label>
          <select
            id={`${base}-band`}
            value={only.band ?? ''}
            onChange={({ target }) =>
              setOnly({ ...only, band: temperatureBand.safeParse(target.value).data ?? null })
            }
          >
            <option value="">any</option>
            {temperatureBand.options.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </div>
      </div>
      <RatioSection
        of={{
          kind: 'class',
          service: orAll(service),
          band,
          lubricant: orAll(lubricant),
          batch: orAll(batch),
          studUses: counted ? Number(uses) : null,
        }}
      />
      <OwnRecordSection />
    </Desk>
  );
}
