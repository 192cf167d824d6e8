import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { RequestError } from '../../../core/contract/errors.ts';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { BreakoutGrid } from './breakout-grid.tsx';
import { Remarks, WhenAndWho } from './common-fields.tsx';
import { MethodFields, UsedTools } from './method-fields.tsx';
import { type BreakoutForm, breakoutInput, freshCommon, rowsFor, studsOf } from './record-form-values.ts';
import { RecordPage } from './record-page.tsx';

interface RecordProps {
  readonly jointId: string;
  readonly settingId: string | null;
}

export function RecordBreakout({ jointId, settingId }: RecordProps) {
  return (
    <RecordPage jointId={jointId} settingId={settingId} kind="breakout">
      {(joint, setting) => <BreakoutEditor joint={joint} setting={setting} />}
    </RecordPage>
  );
}

interface EditorProps {
  readonly joint: JointDetail;
  readonly setting: IssuedSetting | null;
}

/** Rows offered when the number of studs is not known; more can be added. */
const ROWS_WITHOUT_COUNT = 8;

function BreakoutEditor({ joint, setting }: EditorProps) {
  const { timeZone } = useRegister();
  const draftName = `breakout.${joint.id}.${setting?.id ?? 'none'}`;
  const started = freshCommon(setting, timeZone);
  const fresh: BreakoutForm = {
    ...started,
    readAs: 'dialled',
    unit: setting?.card.gauge?.unit ?? 'bar',
    readings: rowsFor(studsOf(joint, started.boltSet) ?? ROWS_WITHOUT_COUNT),
  };
  const form = useForm<BreakoutForm>({ defaultValues: draftOf(draftName, fresh) });
  const draft = useDraft(draftName, form);
  const record = useWrite('event.recordBreakout');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    record.mutate(
      { data: breakoutInput(values, { jointId: joint.id, setting, timeZone }) },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/events/${written.id}`);
        },
      },
    ),
  );
  const error = record.error && withStuds(record.error.error, record.variables?.data.readings ?? []);
  return (
    <FormProvider {...form}>
      <Faults value={error?.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(fresh);
              draft.drop();
            }}
          />
          <WhenAndWho />
          <fieldset>
            <legend>What was done</legend>
            <div className="fields">
              <MethodFields joint={joint} />
            </div>
          </fieldset>
          <BreakoutGrid joint={joint} />
          <UsedTools />
          <Remarks />
          {error && <Failure error={error} what="The breakout was not recorded." />}
          <div className="row">
            <button type="submit" className="act" disabled={record.isPending}>
              Record breakout
            </button>
            <Link className="quiet" href={`/joints/${joint.id}`}>
              Leave without recording
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

/** Only loosened studs are sent, so a fault's row is not its stud: it is named by the stud. */
function withStuds(error: RequestError, readings: readonly { readonly bolt: number }[]): RequestError {
  return {
    ...error,
    details: error.details.map((fault) => ({
      ...fault,
      field: fault.field.replace(/readings\.(\d+)/, (_, row) => `stud ${readings[Number(row)]?.bolt ?? '?'}`),
    })),
  };
}
