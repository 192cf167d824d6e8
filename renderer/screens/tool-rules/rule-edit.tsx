import { FormProvider, useForm } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { ToolRuleRow } from '../../../core/contract/check.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { RoomIndex } from '../tools/room-index.tsx';
import { emptyRule, groupsOf, type RuleForm, ruleForm, ruleInput } from './rule-form-values.ts';

/** A rule for a class that has none yet. */
export function NewRule({ toolClass }: { readonly toolClass: string | undefined }) {
  const known = TOOL_CLASSES.find((each) => each === toolClass) ?? '';
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Title
        name={known === '' ? 'New rule' : `New rule for the ${known}`}
        under="A field left empty asks nothing."
      />
      <RuleEditor rule={null} start={emptyRule(known)} />
    </Desk>
  );
}

export function EditRule({ id }: { readonly id: string }) {
  const rules = useAsk('toolRule.list', {});
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <Asked asking={rules} what="the rule">
        {({ rows }) => {
          const rule = rows.find((row) => row.id === id);
          return rule === undefined ? (
            <Title name="There is no such rule" />
          ) : (
            <>
              <Title
                name={`Rule for the ${rule.data.class}`}
                under={`Saving makes version ${rule.version + 1}; the old one stays in the history. A field left empty asks nothing.`}
              />
              <RuleEditor rule={rule} start={ruleForm(rule.data)} />
            </>
          );
        }}
      </Asked>
    </Desk>
  );
}

interface EditorProps {
  readonly rule: ToolRuleRow | null;
  readonly start: RuleForm;
}

function RuleEditor({ rule, start }: EditorProps) {
  const draftName = rule === null ? `tool-rule.${start.class}` : `tool-rule.${rule.id}.${rule.version}`;
  const form = useForm<RuleForm>({ defaultValues: draftOf(draftName, start) });
  const draft = useDraft(draftName, form);
  const save = useWrite('toolRule.save');
  const [, goTo] = useLocation();
  const groups = groupsOf(form.watch());
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      { id: rule?.id ?? null, version: rule?.version ?? null, data: ruleInput(values) },
      {
        onSuccess: () => {
          draft.drop();
          goTo('/tool-rules');
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
            <legend>Rule</legend>
            <div className="fields">
              {rule === null && (
                <Choice
                  name="class"
                  label="Class of tool"
                  options={same(TOOL_CLASSES)}
                  blank="Choose the class"
                />
              )}
              <Choice
                name="dueAt"
                label="A due date counts to"
                blank="Choose how it counts"
                options={[
                  { value: 'exact day', words: 'the exact day' },
                  { value: 'end of month', words: 'the end of its month' },
                ]}
              />
              <Text name="noticeDays" label="Due soon, days ahead" inputMode="numeric" hint="0 to 365 days" />
              <Text name="source" label="Source" hint="Procedure with its edition, or standard" whole />
            </div>
          </fieldset>
          {groups.certificate && <CertificateFields />}
          {groups.line && (
            <fieldset>
              <legend>Several tools on one pump</legend>
              <div className="fields">
                <Quantity
                  name="lineAgreement"
                  label="Their lines lie no farther apart than"
                  quantity="ratio"
                  hint="Of the torque"
                />
              </div>
            </fieldset>
          )}
          {groups.hose && <HoseFields />}
          {save.error && <Failure error={save.error.error} what="The rule was not saved." />}
          <div className="row">
            <button type="submit" className="act" disabled={save.isPending}>
              Save rule
            </button>
            <Link className="quiet" href="/tool-rules">
              Leave without saving
            </Link>
          </div>
        </form>
      </Faults>
    </FormProvider>
  );
}

function CertificateFields() {
  return (
    <fieldset>
      <legend>Calibration</legend>
      <div className="fields">
        <Text
          name="certificateDays"
          label="Days from calibration"
          inputMode="numeric"
          hint="Or the certificate’s own last day, whichever comes first"
        />
        <Text
          name="certificateUses"
          label="Recorded uses since the certificate"
          inputMode="numeric"
          hint="Whichever comes first"
        />
      </div>
    </fieldset>
  );
}

function HoseFields() {
  return (
    <fieldset>
      <legend>Hoses</legend>
      <div className="fields">
        <Text
          name="hoseAgeMonths"
          label="Months from the day made"
          inputMode="numeric"
          hint="Storage included"
        />
        <Text name="hoseUseMonths" label="Months in use" inputMode="numeric" hint="From the first use" />
        <Text name="hoseTestMonths" label="Months between pressure tests" inputMode="numeric" />
        <Text
          name="hoseTestFactor"
          label="Test pressure over the rating"
          inputMode="decimal"
          hint="1 to 2 times; as the hose’s own instructions and the site’s procedure say"
        />
      </div>
    </fieldset>
  );
}
