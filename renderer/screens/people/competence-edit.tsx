import { FormProvider, useForm, useFormContext } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { CompetenceRow } from '../../../core/contract/access.ts';
import { method } from '../../../core/contract/setting.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, LongText, Text } from '../../components/fields.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import {
  type CompetenceForm,
  competenceForm,
  competenceInput,
  EMPTY_COMPETENCE,
} from './competence-form-values.ts';

interface EditProps {
  readonly personId: string;
  /** "new" for one that is not recorded yet. */
  readonly competenceId: string;
}

export function EditCompetence({ personId, competenceId }: EditProps) {
  const people = useAsk('person.list', {});
  const papers = useAsk('competence.list', { personId });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Asked asking={people} what="the person">
        {({ rows: everybody }) => (
          <Asked asking={papers} what="the competences">
            {({ rows }) => {
              const person = everybody.find(({ id }) => id === personId);
              const row = rows.find(({ id }) => id === competenceId) ?? null;
              if (person === undefined || (row === null && competenceId !== 'new')) {
                return <Title name="There is no such competence" />;
              }
              return (
                <>
                  <Title
                    name={row === null ? 'New competence' : `${row.data.scheme} ${row.data.certificate}`}
                    under={person.name}
                  />
                  <Editor personId={personId} row={row} />
                </>
              );
            }}
          </Asked>
        )}
      </Asked>
    </Desk>
  );
}

interface EditorProps {
  readonly personId: string;
  readonly row: CompetenceRow | null;
}

function Editor({ personId, row }: EditorProps) {
  const start = row === null ? EMPTY_COMPETENCE : competenceForm(row.data);
  const draftName = row === null ? `competence.of.${personId}` : `competence.${row.id}.${row.version}`;
  const form = useForm<CompetenceForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const save = useWrite('competence.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: row?.id ?? null, version: row?.version ?? null, data: competenceInput(values, personId) },
      {
        onSuccess: () => {
          draft.drop();
          goTo(`/people/${personId}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <form className="form" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>Paper</legend>
            <div className="fields">
              <Text name="scheme" label="Scheme" offers={['EN 1591-4']} hint="Standard, or the site’s own" />
              <Text name="level" label="Level" />
              <Text name="certificate" label="Number of the certificate" />
              <Text name="assessor" label="Assessed by" />
              <Text name="issuedOn" label="Issued on" type="date" />
              <Text
                name="validUntil"
                label="Valid until"
                type="date"
                hint="Empty where the paper states none; by EN 1591-4 five years at most"
              />
              <Text name="lastPracticeOn" label="Practice last shown on" type="date" />
            </div>
          </fieldset>
          <Methods />
          <fieldset>
            <legend>Bounds</legend>
            <div className="fields">
              <Text name="jointTypes" label="Types of joint" hint="In the paper’s own words" />
              <Text name="restrictions" label="Restrictions" />
              <LongText name="remarks" label="Remarks" whole />
            </div>
            {row !== null && <Check name="withdrawn" label="Withdrawn: it no longer counts" />}
          </fieldset>
          {save.error && <Failure error={save.error.error} what="The competence was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save competence
            </button>
            <Link className="quiet" href={`/people/${personId}`}>
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function Methods() {
  const { register } = useFormContext<CompetenceForm>();
  return (
    <fieldset data-field="methods">
      <legend>For work with</legend>
      <p className="lead-in small">
        None chosen: the paper names no method, and the competence stays not known.
      </p>
      <div className="checks">
        {method.options.map((each) => (
          <label className="check" key={each}>
            <input type="checkbox" value={each} {...register('methods')} />
            {each}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
