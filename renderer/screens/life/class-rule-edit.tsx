import { FormProvider, useFieldArray, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import { ROLES } from '../../../core/access/roles.ts';
import { criticality, testEvidence } from '../../../core/contract/assembly.ts';
import { type ClassRuleRow, jointStep } from '../../../core/contract/life.ts';
import { GROUPS } from '../../../core/record/field.ts';
import { requiredFields } from '../../../core/record/fields.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, Choice, LongText, same, Text } from '../../components/fields.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import {
  type ClassRuleForm,
  EMPTY_RULE,
  FIELDS_BY_GROUP,
  RULE_FAULTS,
  ruleForm,
  ruleInput,
} from './class-rule-form.ts';

type SiteRule = Extract<ClassRuleRow, { origin: 'site' }>;

const METHODS = testEvidence.shape.method.unwrap().exclude(['not known']).options;

export function NewClassRule() {
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="New class"
        under="It rests on one of the three common classes, and says what follows from it."
      />
      <RuleEditor rule={null} />
    </Desk>
  );
}

export function EditClassRule({ id }: { readonly id: string }) {
  const rules = useAsk('classRule.list', {});
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Asked asking={rules} what="the class">
        {({ rows }) => {
          const rule = rows.find((row): row is SiteRule => row.origin === 'site' && row.id === id);
          return rule === undefined ? (
            <Title name="There is no such class" under="Classes that come with the program are not edited." />
          ) : (
            <>
              <Title
                name={`Edit class ${rule.data.name}`}
                under="What was held against the version before stays as it was recorded."
              />
              <RuleEditor rule={rule} />
            </>
          );
        }}
      </Asked>
    </Desk>
  );
}

function RuleEditor({ rule }: { readonly rule: SiteRule | null }) {
  const start = rule === null ? EMPTY_RULE : ruleForm(rule.data);
  const draftName = rule === null ? 'class-rule' : `class-rule.${rule.id}.${rule.version}`;
  const form = useForm<ClassRuleForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const save = useWrite('classRule.save');
  const [, goTo] = useLocation();
  const faults = (save.error?.error.details ?? []).map((fault) => ({
    ...fault,
    field: RULE_FAULTS[fault.field] ?? fault.field,
  }));
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: rule?.id ?? null, version: rule?.version ?? null, data: ruleInput(values) },
      {
        onSuccess: () => {
          draft.drop();
          goTo('/class-rules');
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={faults}>
        <form className="form" aria-label="Class" onSubmit={onSubmit} noValidate>
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(start);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>Class</legend>
            <div className="fields">
              <Text name="name" label="Name" />
              <Choice
                name="level"
                label="Rests on"
                options={same(criticality.options)}
                blank="Choose the common class"
              />
              <Text name="source" label="Source" hint="The site’s procedure it carries out" whole />
            </div>
          </fieldset>
          <fieldset>
            <legend>Witness, load and leak test</legend>
            <div className="fields">
              <Text
                name="witnessPercent"
                label="Tightenings witnessed, %"
                inputMode="numeric"
                hint="0 to 100"
              />
              <Text
                name="loadCheckPercent"
                label="Tightenings with the load measured, %"
                inputMode="numeric"
                hint="0 to 100"
              />
            </div>
            <Check name="testNeeded" label="A leak test is needed" />
            <Ticks name="testMethods" legend="Methods that count; none ticked for any" options={METHODS} />
            <div className="fields">
              <LongText name="testWords" label="The site’s words on the leak test" whole />
            </div>
          </fieldset>
          <fieldset>
            <legend>Retightening</legend>
            <Check name="afterDwell" label="A pass after the dwell is needed" />
            <Check name="duringStartUp" label="A pass during start-up is needed" />
            <div className="fields">
              <Text name="dwell" label="Dwell, h" inputMode="decimal" hint="4 to 168 h" />
              <LongText name="retighteningWords" label="The site’s words on retightening" whole />
            </div>
          </fieldset>
          <Depth />
          <fieldset>
            <legend>Who</legend>
            <div className="fields">
              <Text name="technicianLevel" label="Level of the technician" whole />
            </div>
            <Signs />
          </fieldset>
          {rule !== null && <Check name="retired" label="Retired: given to no further joint" />}
          {save.error && <Failure error={save.error.error} what="The class was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save class
            </button>
            <Link className="quiet" href="/class-rules">
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

interface TicksProps {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly string[];
}

function Ticks({ name, legend, options }: TicksProps) {
  const { register } = useFormContext();
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className="checks">
        {options.map((option) => (
          <label className="check" key={option}>
            <input type="checkbox" value={option} {...register(name)} />
            {option}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** How much of an assembly's record is required: the program's list of the level, or one of the site's own. */
function Depth() {
  const { setValue } = useFormContext<ClassRuleForm>();
  const own: boolean = useWatch({ name: 'ownFields' });
  const level: ClassRuleForm['level'] = useWatch({ name: 'level' });
  const choose = (on: boolean) => {
    setValue('ownFields', on, { shouldDirty: true });
    if (on) setValue('fields', level === '' ? [] : requiredFields(level));
  };
  return (
    <fieldset>
      <legend>Record</legend>
      <Check name="completeRecord" label="Complete before the joint is reinstated" />
      <label className="check">
        <input type="checkbox" checked={own} onChange={({ target }) => choose(target.checked)} />A list of
        required fields of the site’s own
      </label>
      {own &&
        [...FIELDS_BY_GROUP].map(([group, names]) => (
          <details className="folded" key={group}>
            <summary>{GROUPS[group]}</summary>
            <Ticks name="fields" legend={GROUPS[group]} options={names} />
          </details>
        ))}
    </fieldset>
  );
}

function Signs() {
  const { fields, append, remove } = useFieldArray<ClassRuleForm, 'signs'>({ name: 'signs' });
  return (
    <fieldset>
      <legend>Steps with signers of their own</legend>
      {fields.map((field, at) => (
        <div className="row-of-list" key={field.id}>
          <div className="fields">
            <Choice
              name={`signs.${at}.step`}
              label={`Step, signers ${at + 1}`}
              options={same(jointStep.options)}
            />
          </div>
          <Ticks name={`signs.${at}.roles`} legend={`Who signs, signers ${at + 1}`} options={ROLES} />
          <button type="button" className="link small" onClick={() => remove(at)}>
            Remove signers {at + 1}
          </button>
        </div>
      ))}
      <button
        type="button"
        className="quiet"
        onClick={() => append({ step: 'reinstate', roles: ['engineer'] })}
      >
        Add a step that others sign
      </button>
    </fieldset>
  );
}
