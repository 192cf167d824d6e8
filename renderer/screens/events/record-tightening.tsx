import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Quantity, Text } from '../../components/fields.tsx';
import { blank } from '../../components/typed.ts';
import { takesToolSet } from '../../components/work-method.ts';
import { Remarks, WhenAndWho } from './common-fields.tsx';
import { MethodFields, UsedTools } from './method-fields.tsx';
import {
  freshCommon,
  plannedBatches,
  studsOf,
  type TighteningForm,
  tighteningInput,
} from './record-form-values.ts';
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
    ...freshCommon(setting, timeZone),
    dialled: blank(setting?.card.gauge?.unit ?? 'bar'),
    torque: blank('N.m'),
    load: blank('kN'),
    boltsTightened: '',
    finalPassNoTurn: false,
    batches: plannedBatches(joint),
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
              <MethodFields joint={joint} />
              <ReachedFields />
              <StudsTightened joint={joint} />
              <Check name="finalPassNoTurn" label="No nut turned in the final round" />
            </div>
          </fieldset>
          <UsedTools />
          <BatchFields />
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

/** What shows that the work is done: a pressure, a torque, or the load that was left. */
function ReachedFields() {
  const method = useWatch<TighteningForm, 'method'>({ name: 'method' });
  if (method === 'tensioner') {
    return (
      <Quantity
        name="load"
        label="Load left in each stud"
        quantity="force"
        hint="From the tensioning record; needed"
      />
    );
  }
  if (!takesToolSet(method)) {
    return <Quantity name="torque" label="Torque" quantity="torque" hint="As set on the tool; needed" />;
  }
  return (
    <>
      <Quantity
        name="dialled"
        label="Dialled for the final pass"
        quantity="pressure"
        hint="As the gauge showed it"
      />
      <Quantity name="torque" label="Torque" quantity="torque" hint="Only where no pressure was dialled" />
    </>
  );
}

/** One wrong lot can sit in many joints: the number on the part leads from one to all. */
function BatchFields() {
  return (
    <fieldset>
      <legend>Batches that went on</legend>
      <div className="fields">
        <Text name="batches.stud.number" label="Stud batch" hint="Heat or lot as marked or on the packing" />
        <Text name="batches.nut.number" label="Nut batch" />
        <Text name="batches.gasket.number" label="Gasket batch" hint="Of the gasket really fitted" />
        <Text name="batches.lubricant.number" label="Lubricant batch" hint="As on the tin that was opened" />
      </div>
    </fieldset>
  );
}

function StudsTightened({ joint }: { readonly joint: JointDetail }) {
  const boltSet = useWatch<TighteningForm, 'boltSet'>({ name: 'boltSet' });
  const studs = studsOf(joint, boltSet);
  const whose = joint.data.boltSets.length > 0 ? 'bolt set' : 'joint';
  return (
    <Text
      name="boltsTightened"
      label="Studs tightened"
      inputMode="numeric"
      hint={studs === null ? `The ${whose}’s number of studs is not known` : `The ${whose} has ${studs}`}
    />
  );
}
