import type { CampaignData, CampaignInput } from '../../../core/contract/campaign.ts';
import type { ToolSetInput } from '../../../core/contract/setting.ts';
import { atSite, withOffset } from '../../app/text/time.ts';
import { textOrNull } from '../../components/typed.ts';

interface CrewForm {
  name: string;
  from: string;
  to: string;
  shifts: { from: string; to: string }[];
  personIds: string[];
}

interface SetForm {
  name: string;
  from: string;
  to: string;
  tools: ToolSetInput;
}

export interface CampaignForm {
  name: string;
  startsAt: string;
  endsAt: string;
  /** One a line, in the order they are to be tested. */
  testPacks: string;
  travelMinutes: string;
  remarks: string;
  closed: boolean;
  crews: CrewForm[];
  sets: SetForm[];
}

const NO_TOOLS: ToolSetInput = {
  driveId: null,
  cassetteId: null,
  reducerIds: [],
  hoseIds: [],
  pumpId: null,
  gaugeId: null,
};

const DEFAULT_TRAVEL = '15';

export const emptyCampaign = (today: string): CampaignForm => ({
  name: '',
  startsAt: `${today}T06:00`,
  endsAt: '',
  testPacks: '',
  travelMinutes: DEFAULT_TRAVEL,
  remarks: '',
  closed: false,
  crews: [],
  sets: [],
});

export const emptyCrew = ({ startsAt, endsAt }: Pick<CampaignForm, 'startsAt' | 'endsAt'>): CrewForm => ({
  name: '',
  from: startsAt.slice(0, 10),
  to: endsAt.slice(0, 10),
  shifts: [{ from: '06:00', to: '18:00' }],
  personIds: [],
});

export const emptySet = (): SetForm => ({ name: '', from: '', to: '', tools: NO_TOOLS });

const local = (instant: string, timeZone: string) => atSite(instant, timeZone).slice(0, 16);

export const campaignForm = (data: CampaignData, timeZone: string): CampaignForm => ({
  name: data.name,
  startsAt: local(data.startsAt, timeZone),
  endsAt: local(data.endsAt, timeZone),
  testPacks: data.testPacks.join('\n'),
  travelMinutes: String(data.travelMinutes),
  remarks: data.remarks,
  closed: data.closed,
  crews: data.crews.map((crew) => ({ ...crew, shifts: crew.shifts.map((shift) => ({ ...shift })) })),
  sets: data.sets.map(({ name, from, to, tools }) => ({ name, from: from ?? '', to: to ?? '', tools })),
});

/** What is missing or can't be read goes to the service as it stands, which names the field. */
export const campaignInput = (form: CampaignForm, timeZone: string): CampaignInput => ({
  name: form.name,
  startsAt: instantOf(form.startsAt, timeZone),
  endsAt: instantOf(form.endsAt, timeZone),
  testPacks: form.testPacks
    .split('\n')
    .map((pack) => pack.trim())
    .filter((pack) => pack !== ''),
  travelMinutes: numberOf(form.travelMinutes) as number,
  remarks: form.remarks,
  closed: form.closed,
  crews: form.crews,
  sets: form.sets.map(({ from, to, ...set }) => ({ ...set, from: textOrNull(from), to: textOrNull(to) })),
});

/** A moment typed at the site; what is none is left for the service to name. */
export const instantOf = (text: string, timeZone: string): string =>
  /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(text) ? withOffset(text.slice(0, 16), timeZone) : text;

export const numberOf = (text: string): number | string =>
  /^\d+$/.test(text.trim()) ? Number(text.trim()) : text;
