import { useState } from 'react';
import { useFormContext } from 'react-hook-form';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { day, dayOf } from '../../app/text/time.ts';
import { Combobox } from '../../components/combobox.tsx';
import { Choice, LongText, type Option, Quantity } from '../../components/fields.tsx';
import { ToolPicker } from '../../components/tool-picker.tsx';
import type { CaseForm } from './case-form-values.ts';

/** What turned out wrong, and what says so. */
export function CaseSubject() {
  const { watch, setValue } = useFormContext<CaseForm>();
  const { timeZone } = useRegister();
  const [about, toolId, evidence] = watch(['about', 'toolId', 'evidence']);
  const record = useAsk('tool.record', { id: toolId }, { enabled: about === 'tool' && toolId !== '' });
  const stated = about === 'batch' || evidence === 'statement';
  return (
    <fieldset>
      <legend>What turned out wrong</legend>
      <div className="fields">
        <Choice
          name="about"
          label="It is"
          options={[
            { value: 'tool', words: 'a tool' },
            { value: 'batch', words: 'a batch of lubricant, gaskets, studs or nuts' },
          ]}
        />
        {about === 'tool' ? (
          <>
            <ToolPicker
              label="Tool"
              toolClass={null}
              chosen={toolId || null}
              onChoose={(id) => {
                setValue('toolId', id ?? '', { shouldDirty: true });
                setValue('evidence', '');
              }}
            />
            <Choice
              name="evidence"
              label="What says so"
              blank="Choose the evidence"
              options={[
                ...(record.data ? evidenceOf(record.data, timeZone) : []),
                { value: 'statement', words: 'a statement, in words' },
              ]}
            />
          </>
        ) : (
          <BatchPicker />
        )}
      </div>
      {stated && (
        <div className="fields after">
          <LongText name="text" label="What is stated, and by whom" whole />
          <Quantity
            name="error"
            label="Real bolt load against intended"
            quantity="ratio"
            hint="−8 % is eight hundredths too little; empty is not known, and every load then says so"
          />
          {about === 'batch' && (
            <Quantity
              name="nutFactor"
              label="Nut factor it really has"
              quantity="ratio"
              hint="Lubricant only; the error then follows for each record"
            />
          )}
        </div>
      )}
    </fieldset>
  );
}

/** What can show that a tool was wrong: points as found, a certificate outside its limits, a failed check. */
function evidenceOf(record: ToolRecord, timeZone: string): Option[] {
  const certificates = record.certificates
    .filter(({ data }) => data.asFound != null || data.result !== 'within limits')
    .map(({ id, data }) => ({
      value: `certificate:${id}`,
      words: `certificate ${data.number} of ${day(data.calibratedOn)}, ${data.asFound == null ? data.result : 'adjusted'}`,
    }));
  const checks = record.checks
    .filter(({ result }) => result === 'failed')
    .map(({ id, kind, happenedAt }) => ({
      value: `check:${id}`,
      words: `failed check (${kind}) of ${dayOf(happenedAt, timeZone)}`,
    }));
  return [...certificates.toReversed(), ...checks];
}

function BatchPicker() {
  const { watch, setValue } = useFormContext<CaseForm>();
  const [text, setText] = useState('');
  const found = useAsk('batch.list', { text, page: 1, pageSize: 30 }, { keep: true });
  const chosen = watch('batchId');
  const option = (row: NonNullable<typeof found.data>['rows'][number]) => ({
    id: row.id,
    name: `${row.name} ${row.number}`,
    detail: `${row.kind}, in ${counted(row.uses, 'record')}`,
  });
  const rows = (found.data?.rows ?? []).map(option);
  return (
    <Combobox
      label="Batch"
      chosen={rows.find(({ id }) => id === chosen) ?? null}
      options={rows}
      onSearch={setText}
      onChoose={(batch) => setValue('batchId', batch?.id ?? '', { shouldDirty: true })}
    />
  );
}
