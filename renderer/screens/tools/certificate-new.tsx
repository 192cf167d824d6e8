import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { ToolDetail } from '../../../core/contract/tool.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { ToolsPicker } from '../../components/tools-picker.tsx';
import {
  type CertificateForm,
  certificateInput,
  EMPTY_CERTIFICATE,
  type Measured,
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
  const kind: Measured = tool.data.properties.class === 'gauge' ? 'gauge' : 'pressure-torque';
  const draftName = `certificate.${tool.id}`;
  const form = useForm<CertificateForm>({
    defaultValues: draftOf(draftName, EMPTY_CERTIFICATE),
  });
  const draft = useDraft(draftName, form);
  const add = useWrite('certificate.add');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    add.mutate(
      { data: certificateInput(values, tool.id, kind) },
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
      <Faults value={add.error?.error.details ?? []}>
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
            </div>
          </fieldset>
          {kind === 'pressure-torque' && (
            <fieldset>
              <legend>Parts it was calibrated together with</legend>
              <ToolsPicker
                label="Cassette or reducer on the certificate"
                classes={['cassette', 'reducer']}
                chosen={form.watch('withToolIds')}
                onChange={(ids) => form.setValue('withToolIds', ids, { shouldDirty: true })}
                most={6}
              />
            </fieldset>
          )}
          <CertificatePoints kind={kind} />
          {kind === 'pressure-torque' && (
            <fieldset>
              <legend>Uncertainty of the reference</legend>
              <div className="fields">
                <Quantity
                  name="expandedUncertainty"
                  label="Expanded uncertainty"
                  quantity="ratio"
                  hint="Of the torque; leave empty when not stated"
                />
                <Text name="coverageFactor" label="Coverage factor k" inputMode="decimal" />
              </div>
            </fieldset>
          )}
          <LongText name="remarks" label="Remarks" />
          {add.error && <Failure error={add.error.error} what="The certificate was not added." />}
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
