import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { nowLocal } from '../../app/text/time.ts';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Quantity, Text } from '../../components/fields.tsx';
import { blank } from '../../components/typed.ts';
import { EMPTY_SET } from '../settings/last-set.ts';
import { Remarks, UsedTools, WhenAndWho } from './common-fields.tsx';
import { type TighteningForm, tighteningInput } from './record-form-values.ts';
import { RecordPage } from './record-page.tsx';

interface RecordProps {
  readonly jointId: string;
  readonly settingId: string | null;
}

export function RecordTightening({ jointId, settingId }: RecordProps) {
  return (
    <RecordPage jointId={jointId} settingId={settingId} kind="tightening">
      {(joint, setting) => <TighteningEditor joint={joint} setting={setting} />}
    </RecordPage>
  );
}

interface EditorProps {
  readonly joint: JointDetail;
  readonly setting: IssuedSetting | null;
}

function TighteningEditor({ joint, setting }: EditorProps) {
  const { timeZone } = useRegister();
  const draftName = `tightening.${joint.id}.${setting?.id ?? 'none'}`;
  const fresh: TighteningForm = {
    happenedAt: nowLocal(timeZone),
    personIds: [],
    tools: setting?.input.tools ?? EMPTY_SET,
    dialled: blank(setting?.card.gauge?.unit ?? 'bar'),
    torque: blank('N.m'),
    load: blank('kN'),
    boltsTightened: '',
    finalPassNoTurn: false,
    remarks: '',
  };
  const form = useForm<TighteningForm>({ defaultValues: draftOf(draftName, fresh) });
  const draft = useDraft(draftName, form);
  const record = useWrite('event.recordTightening');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    record.mutate(
      { data: tighteningInput(values, { jointId: joint.id, setting, timeZone }) },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/events/${written.id}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={record.error?.error.details ?? []}>
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
              <Quantity
                name="dialled"
                label="Dialled for the final pass"
                quantity="pressure"
                hint="As the gauge showed it"
              />
              <Quantity
                name="torque"
                label="Torque"
                quantity="torque"
                hint="Only for work done without pressure"
              />
              {setting?.input.method === 'tensioner' && (
                <Quantity
                  name="load"
                  label="Load left in each stud"
                  quantity="force"
                  hint="From the tensioning record; needed"
                />
              )}
              <Text
                name="boltsTightened"
                label="Studs tightened"
                inputMode="numeric"
                hint={
                  joint.boltCount === null
                    ? 'The joint’s number of studs is not known'
                    : `The joint has ${joint.boltCount}`
                }
              />
              <Check name="finalPassNoTurn" label="No nut turned in the final round" />
            </div>
          </fieldset>
          <UsedTools />
          <Remarks />
          {record.error && <Failure error={record.error.error} what="The tightening was not recorded." />}
          <div className="row">
            <button type="submit" className="act" disabled={record.isPending}>
              Record tightening
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
