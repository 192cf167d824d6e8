import { useMemo } from 'react';
import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { ToolDetail } from '../../../core/contract/tool.ts';
import { unitsOf } from '../../../core/units/units.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { unitLabel } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { ToolsPicker } from '../../components/tools-picker.tsx';
import { Assessment, Confirmations, useAssessment } from './certificate-assessment.tsx';
import { certificateFaults } from './certificate-faults.ts';
import {
  assessable,
  type CertificateForm,
  certificateInput,
  EMPTY_CERTIFICATE,
  type Measured,
  measuredOf,
} from './certificate-form-values.ts';
import { CertificatePoints } from './certificate-points.tsx';
import { ToolIndex } from './tool-index.tsx';

export function NewCertificate({ id }: { readonly id: string }) {
  const tool = useAsk('tool.get', { id });
  return (
    <Desk indexLabel="Tools" index={<ToolIndex current={id} />}>
      <Asked asking={tool} what="the tool">
        {(detail) => (
          <>
            <Title
              name={`New certificate for ${detail.data.number}`}
              beside={detail.data.properties.class}
              under="A certificate is never changed once it is on the register; a correction is a new one."
            />
            <CertificateEditor tool={detail} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

function CertificateEditor({ tool }: { readonly tool: ToolDetail }) {
  const { today } = useRegister();
  const kind = measuredOf(tool.data.properties.class);
  const draftName = `certificate.${tool.id}`;
  const form = useForm<CertificateForm>({
    defaultValues: draftOf(draftName, EMPTY_CERTIFICATE),
  });
  const draft = useDraft(draftName, form);
  const add = useWrite('certificate.add');
  const [, goTo] = useLocation();
  const typed = form.watch();
  const assessing = useAssessment(assessable(typed, tool.id, kind, today));
  const missing = usePlaced(assessing.faults, kind, typed);
  const doubts = missing.length > 0 ? [] : (assessing.said?.doubts ?? []);
  const faults = usePlaced(add.error?.error.details, kind, typed);
  const onSubmit = form.handleSubmit((values) =>
    add.mutate(
      { data: certificateInput(values, tool.id, kind, doubts) },
      {
        onSuccess: () => {
          draft.drop();
          goTo(`/tools/${tool.id}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={faults}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(EMPTY_CERTIFICATE);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>Certificate</legend>
            <div className="fields">
              <Text name="number" label="Certificate number" />
              <Text name="laboratory" label="Laboratory" />
              <Text name="calibratedOn" label="Calibrated on" type="date" />
              <Text name="validUntil" label="Valid until" type="date" />
              <Text
                name="validityBasis"
                label="Validity set by"
                hint="Whose rule: the laboratory's, the site's"
              />
              <Choice
                name="result"
                label="Result"
                options={same(['within limits', 'outside limits', 'no limits stated'])}
                blank="Choose the result"
              />
              <Choice
                name="condition"
                label="Condition"
                options={same(['as found', 'as left'])}
                blank="Choose the condition"
              />
              <Text name="method" label="Method" hint="As the certificate states it" />
            </div>
          </fieldset>
          {kind === 'pressure-torque' && (
            <fieldset>
              <legend>Parts it was calibrated together with</legend>
              <ToolsPicker
                label="Cassette or reducer on the certificate"
                classes={['cassette', 'square-drive head', 'reducer']}
                chosen={form.watch('withToolIds')}
                onChange={(ids) => form.setValue('withToolIds', ids, { shouldDirty: true })}
                most={6}
              />
            </fieldset>
          )}
          <PointUnits kind={kind} />
          <CertificatePoints kind={kind} series="rows" />
          <Check
            name="adjusted"
            label="It was adjusted: the points above are as left, those as found stand below"
          />
          {typed.adjusted && <CertificatePoints kind={kind} series="foundRows" />}
          <LimitAndSurroundings kind={kind} />
          <LongText name="remarks" label="Remarks" />
          <Assessment
            kind={kind}
            said={assessing.said}
            faults={missing}
            asked={assessing.asked}
            adjusted={typed.adjusted}
            units={typed}
          />
          <Confirmations doubts={doubts} />
          {add.error && (
            <Failure error={{ ...add.error.error, details: faults }} what="The certificate was not added." />
          )}
          <div className="row">
            <button type="submit" className="act" disabled={add.isPending}>
              Add this certificate
            </button>
            <Link className="quiet" href={`/tools/${tool.id}`}>
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

const NONE: readonly FieldFault[] = [];

/** The service's faults at the form's own fields; the same list while nothing changed, so that labels settle. */
function usePlaced(faults: readonly FieldFault[] | undefined, kind: Measured, typed: CertificateForm) {
  const text = faults && JSON.stringify(certificateFaults(faults, kind, typed));
  return useMemo(() => (text === undefined ? NONE : (JSON.parse(text) as FieldFault[])), [text]);
}

interface KindProps {
  readonly kind: Measured;
}

const offered = (quantity: 'pressure' | 'torque') =>
  unitsOf(quantity).map((unit) => ({ value: unit, words: unitLabel(unit) }));

function PointUnits({ kind }: KindProps) {
  return (
    <div className="fields">
      {kind !== 'hand torque' && (
        <Choice
          name="pressureUnit"
          label="Unit of pressure"
          options={offered('pressure')}
          blank="Choose the unit"
        />
      )}
      {kind !== 'gauge' && (
        <Choice
          name="torqueUnit"
          label="Unit of torque"
          options={offered('torque')}
          blank="Choose the unit"
        />
      )}
    </div>
  );
}

function LimitAndSurroundings({ kind }: KindProps) {
  return (
    <fieldset>
      <legend>Uncertainty, limit and surroundings</legend>
      <div className="fields">
        {kind === 'pressure-torque' && (
          <>
            <Quantity
              name="expandedUncertainty"
              label="Expanded uncertainty"
              quantity="ratio"
              hint="Of the reference, common to all points; empty when not stated"
            />
            <Text name="coverageFactor" label="Coverage factor k" inputMode="decimal" />
          </>
        )}
        <Quantity
          name="decisionRule.limit"
          label="Largest permissible error"
          quantity="ratio"
          hint="Of the reading; empty when none is set"
        />
        <Quantity name="environment.temperature" label="Temperature" quantity="temperature" />
        <Quantity name="environment.humidity" label="Relative humidity" quantity="ratio" />
      </div>
      <Check
        name="decisionRule.guardBand"
        label="With a guard band: error and expanded uncertainty together keep the limit"
      />
    </fieldset>
  );
}
