import { FormProvider, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { JointLeaks } from '../../../core/contract/leak-log.ts';
import { useAsk, useAskEach, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { nowLocal, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults, useFaultsUnder } from '../../components/faults.ts';
import { Choice, LongText, Text } from '../../components/fields.tsx';
import { JointPicker } from '../../components/joint-picker.tsx';
import { ChosenPerson } from '../cases/chosen-person.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { type CyclesForm, cyclesInput, emptyCycles } from './cycles-form-values.ts';

/** How often joints were heated and cooled in a time, as somebody counted it. */
export function CyclesPage({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const leaks = useAsk('joint.leaks', { id });
  return (
    <Desk indexLabel="Joints" index={<JointIndex current={id} />}>
      <Asked asking={joint} what="the joint">
        {(detail) => (
          <>
            <Title
              name={`Thermal cycles of ${detail.data.tag}`}
              beside={detail.unitName}
              under="What was counted, from which day to which. Days nobody counted are not known, and are never taken for none."
            />
            <Asked asking={leaks} what="what is counted">
              {({ counts }) => <Editor joint={detail} counts={counts} />}
            </Asked>
          </>
        )}
      </Asked>
    </Desk>
  );
}

interface EditorProps {
  readonly joint: JointDetail;
  readonly counts: JointLeaks['counts'];
}

function Editor({ joint, counts }: EditorProps) {
  const { timeZone } = useRegister();
  const start = emptyCycles(joint.id, nowLocal(timeZone));
  const draftName = `cycles.${joint.id}`;
  const form = useForm<CyclesForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const record = useWrite('cycles.record');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    record.mutate(cyclesInput(values, timeZone), {
      onSuccess: () => {
        draft.drop();
        goTo(`/joints/${joint.id}`);
      },
    }),
  );
  return (
    <FormProvider {...form}>
      <Faults value={record.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>What was counted</legend>
            <div className="fields">
              <Text name="from" label="From" type="date" />
              <Text name="until" label="Last day counted" type="date" />
              <Text
                name="cycles"
                label="Thermal cycles"
                inputMode="numeric"
                hint="Heated up and cooled down once is one"
              />
              <Text
                name="basis"
                label="What counted them"
                hint="As trend of TI-310, swings above 100 K"
                whole
              />
              {counts.length > 0 && (
                <Choice
                  name="supersedes"
                  label="Takes the place of"
                  blank="None, these days were not counted yet"
                  options={counts.map((each) => ({
                    value: each.eventId,
                    words: `${span(each.from, each.until)}: ${counted(each.cycles, 'cycle')}`,
                  }))}
                  hint="A correction names the count it corrects; both stay on record"
                  whole
                />
              )}
            </div>
          </fieldset>
          <Joints own={joint.id} />
          <fieldset>
            <legend>Who and when</legend>
            <div className="fields">
              <ChosenPerson label="Counted by" />
              <Text name="happenedAt" label="When" type="datetime-local" hint="In the site’s time zone" />
              <LongText name="remarks" label="Remarks" whole />
            </div>
          </fieldset>
          {record.error && <Failure error={record.error.error} what="Nothing was recorded." />}
          <div className="row">
            <button type="submit" className="act" disabled={record.isPending}>
              Record the count
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

/** Joints of one line or one exchanger go through the same cycles; they are counted once for all of them. */
function Joints({ own }: { readonly own: string }) {
  const { setValue } = useFormContext<CyclesForm>();
  const jointIds = useWatch<CyclesForm, 'jointIds'>({ name: 'jointIds' });
  const joints = useAskEach(
    'joint.get',
    jointIds.map((id) => ({ id })),
  );
  const [fault] = useFaultsUnder('jointIds');
  const put = (next: string[]) => setValue('jointIds', next, { shouldDirty: true });
  return (
    <fieldset data-field="jointIds">
      <legend>Joints that went through them together</legend>
      <ul className="plain-list">
        {joints.map(
          ({ data }) =>
            data && (
              <li key={data.id}>
                {data.data.tag}{' '}
                {data.id !== own && (
                  <button
                    type="button"
                    className="link small"
                    onClick={() => put(jointIds.filter((id) => id !== data.id))}
                  >
                    Leave out<span className="unseen"> {data.data.tag}</span>
                  </button>
                )}
              </li>
            ),
        )}
      </ul>
      <JointPicker label="Add a joint" without={jointIds} onChoose={(id) => put([...jointIds, id])} />
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}
