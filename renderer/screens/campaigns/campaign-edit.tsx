import { useState } from 'react';
import { FormProvider, useFieldArray, useForm, useFormContext, useWatch } from 'react-hook-form';
import { Link, useLocation } from 'wouter';
import type { CampaignRow } from '../../../core/contract/campaign.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { draftOf, useDraft } from '../../components/draft.ts';
import { DraftNote } from '../../components/draft-note.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Check, LongText, Text } from '../../components/fields.tsx';
import { PeopleChoice } from '../../components/people-choice.tsx';
import { ToolSetFields } from '../../components/tool-set-fields.tsx';
import {
  type CampaignForm,
  campaignForm,
  campaignInput,
  emptyCampaign,
  emptyCrew,
  emptySet,
} from './campaign-form-values.ts';
import { PlanIndex } from './plan-index.tsx';

export function NewCampaign() {
  return (
    <Desk indexLabel="Plan" index={<PlanIndex />}>
      <Title name="New campaign" under="Its jobs come afterwards, from a list or one by one." />
      <CampaignEditor campaign={null} />
    </Desk>
  );
}

export function EditCampaign({ id }: { readonly id: string }) {
  const campaign = useAsk('campaign.get', { id }, { fresh: true });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={id} />}>
      <Asked asking={campaign} what="the campaign">
        {(row) => (
          <>
            <Title name={`Edit ${row.data.name}`} under={`Version ${row.version}`} />
            <CampaignEditor campaign={row} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

function CampaignEditor({ campaign }: { readonly campaign: CampaignRow | null }) {
  const { today, timeZone } = useRegister();
  const stored = campaign === null ? emptyCampaign(today) : campaignForm(campaign.data, timeZone);
  const draftName = campaign === null ? 'campaign' : `campaign.${campaign.id}.${campaign.version}`;
  const form = useForm<CampaignForm>({ defaultValues: draftOf(draftName, stored) });
  const draft = useDraft(draftName, form);
  const save = useWrite('campaign.save');
  const [, goTo] = useLocation();
  const onSubmit = form.handleSubmit((values) =>
    save.mutate(
      {
        id: campaign?.id ?? null,
        version: campaign?.version ?? null,
        data: campaignInput(values, timeZone),
      },
      {
        onSuccess: (written) => {
          draft.drop();
          goTo(`/plan/campaigns/${written.id}`);
        },
      },
    ),
  );
  return (
    <FormProvider {...form}>
      <Faults value={save.error?.error.details ?? []}>
        <div className="form">
          <DraftNote
            restored={draft.restored}
            onDiscard={() => {
              form.reset(stored);
              draft.drop();
            }}
          />
          <fieldset>
            <legend>Campaign</legend>
            <div className="fields">
              <Text name="name" label="Name of the campaign" whole />
              <Text name="startsAt" label="Starts" type="datetime-local" />
              <Text name="endsAt" label="Ends" type="datetime-local" />
              <Text
                name="travelMinutes"
                label="Minutes between jobs of two areas"
                inputMode="numeric"
                hint="Carrying the tools over and setting up"
              />
              <LongText
                name="testPacks"
                label="Test packs"
                hint="One a line, in the order they are to be tested"
                whole
              />
            </div>
          </fieldset>
          <Crews />
          <Sets />
          <LongText name="remarks" label="Remarks" />
          {campaign !== null && <Check name="closed" label="Over: nothing of it is planned any more" />}
          {save.error && <Failure error={save.error.error} what="The campaign was not saved." />}
          <div className="row">
            <button type="button" className="act" disabled={save.isPending} onClick={onSubmit}>
              Save campaign
            </button>
            <Link
              className="quiet"
              href={campaign === null ? '/plan/campaigns' : `/plan/campaigns/${campaign.id}`}
            >
              Leave without saving
            </Link>
          </div>
        </div>
      </Faults>
    </FormProvider>
  );
}

function Crews() {
  const { control, getValues } = useFormContext<CampaignForm>();
  const { fields, append, remove } = useFieldArray({ control, name: 'crews' });
  return (
    <>
      {fields.map((field, at) => (
        <fieldset key={field.id}>
          <legend>Crew {at + 1}</legend>
          <div className="fields">
            <Text name={`crews.${at}.name`} label={`Name of crew ${at + 1}`} />
            <Text name={`crews.${at}.from`} label={`First day of crew ${at + 1}`} type="date" />
            <Text name={`crews.${at}.to`} label={`Last day of crew ${at + 1}`} type="date" />
          </div>
          <Shifts at={at} />
          <CrewPeople at={at} />
          <button type="button" className="link small" onClick={() => remove(at)}>
            Remove<span className="unseen"> crew {at + 1}</span>
          </button>
        </fieldset>
      ))}
      <div>
        <button type="button" className="quiet" onClick={() => append(emptyCrew(getValues()))}>
          Add a crew
        </button>
      </div>
    </>
  );
}

const MOST_SHIFTS = 4;

function Shifts({ at }: { readonly at: number }) {
  const { control } = useFormContext<CampaignForm>();
  const { fields, append, remove } = useFieldArray({ control, name: `crews.${at}.shifts` });
  return (
    <div className="fields">
      {fields.map((field, shift) => {
        const of = `shift ${shift + 1} of crew ${at + 1}`;
        const name = `crews.${at}.shifts.${shift}`;
        return (
          <div className="row" key={field.id}>
            <Text name={`${name}.from`} label={`From, ${of}`} hint="HH:MM" />
            <Text name={`${name}.to`} label={`To, ${of}`} hint="HH:MM; earlier is the next day" />
            {fields.length > 1 && (
              <button type="button" className="link small" onClick={() => remove(shift)}>
                Remove<span className="unseen"> {of}</span>
              </button>
            )}
          </div>
        );
      })}
      {fields.length < MOST_SHIFTS && (
        <div>
          <button type="button" className="link small" onClick={() => append({ from: '18:00', to: '06:00' })}>
            Add a shift<span className="unseen"> to crew {at + 1}</span>
          </button>
        </div>
      )}
    </div>
  );
}

function CrewPeople({ at }: { readonly at: number }) {
  const { control, setValue } = useFormContext<CampaignForm>();
  const chosen = useWatch({ control, name: `crews.${at}.personIds` });
  return (
    <PeopleChoice
      label={`People of crew ${at + 1}`}
      chosen={chosen}
      onChange={(ids) => setValue(`crews.${at}.personIds`, ids, { shouldDirty: true })}
    />
  );
}

/** One set is opened at a time: each has many fields. */
function Sets() {
  const { control } = useFormContext<CampaignForm>();
  const { fields, append, remove } = useFieldArray({ control, name: 'sets' });
  const [open, setOpen] = useState<number | null>(null);
  return (
    <>
      {fields.map((field, at) => (
        <fieldset key={field.id}>
          <legend>Tool set {at + 1}</legend>
          <div className="fields">
            <Text name={`sets.${at}.name`} label={`Name of set ${at + 1}`} />
            <Text
              name={`sets.${at}.from`}
              label={`There from, set ${at + 1}`}
              type="date"
              hint="Blank is the whole campaign"
            />
            <Text name={`sets.${at}.to`} label={`There until, set ${at + 1}`} type="date" />
          </div>
          {open === at ? (
            <SetTools at={at} />
          ) : (
            <button type="button" className="quiet" onClick={() => setOpen(at)}>
              Parts<span className="unseen"> of set {at + 1}</span>
            </button>
          )}
          <button
            type="button"
            className="link small"
            onClick={() => {
              remove(at);
              setOpen(null);
            }}
          >
            Remove<span className="unseen"> set {at + 1}</span>
          </button>
        </fieldset>
      ))}
      <div>
        <button
          type="button"
          className="quiet"
          onClick={() => {
            append(emptySet());
            setOpen(fields.length);
          }}
        >
          Add a tool set
        </button>
      </div>
    </>
  );
}

function SetTools({ at }: { readonly at: number }) {
  const { control, setValue } = useFormContext<CampaignForm>();
  const tools = useWatch({ control, name: `sets.${at}.tools` });
  return (
    <div className="stack tight">
      <ToolSetFields
        tools={tools}
        onChange={(next) => setValue(`sets.${at}.tools`, next, { shouldDirty: true })}
      />
    </div>
  );
}
