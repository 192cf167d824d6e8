import type { Generated } from 'kysely';
import type { Criticality } from '../../../core/contract/assembly.ts';
import type { JobScope } from '../../../core/contract/campaign.ts';
import type { CheckData, CheckKind } from '../../../core/contract/check.ts';
import type { CustodyStep, MoveData } from '../../../core/contract/custody.ts';
import type { LeakRow } from '../../../core/contract/leak-log.ts';
import type { DeviationDecision, JointState } from '../../../core/contract/life.ts';
import type { STOP_REASONS } from '../../../core/contract/pass.ts';
import type { CaseBasis, CaseDecision, CaseSubject } from '../../../core/contract/recall.ts';
import type { WorkKind } from '../../../core/contract/setting.ts';
import type { SignatureMeaning } from '../../../core/contract/signature.ts';
import type { SiteRowKind } from '../../../core/contract/site.ts';
import type { CertificateData, ToolClass, ToolData } from '../../../core/contract/tool.ts';
import type { Containment } from '../../../core/joint/life/states.ts';
import type { BatchKind, EventKind } from '../chain/events.ts';

/** Columns as SQLite holds them: 0 and 1 for no and yes, ISO 8601 text for dates, JSON as text. */
export interface RegisterSchema {
  origin: { id: string; name: string; created_at: string };
  event: {
    id: string;
    origin_id: string;
    sequence: number;
    previous_hash: string;
    hash: string;
    /** Canonical JSON exactly as hashed. */
    body: string;
    body_version: number;
    kind: EventKind;
    happened_at: string;
    happened_at_utc: string;
    recorded_at: string;
    supersedes: string | null;
  };
  event_joint: { event_id: string; joint_id: string };
  event_tool: {
    event_id: string;
    tool_id: string;
    role: ToolRole;
    position: number;
    /** Moment it was used in a tightening or breakout, UTC; null where the event is no use of it. */
    used_at: Generated<string | null>;
  };
  event_person: { event_id: string; person_id: string; role: PersonRole; position: number };
  event_batch: { event_id: string; batch_id: string };
  event_attachment: { event_id: string; attachment_hash: string };
  attachment: { hash: string; name: string; media_type: string; size: number; added_on: string };
  request_receipt: { key: string; request: string; input_hash: string; answer: string; recorded_at: string };
  site: { id: string; name: string; time_zone: string; demo: number };
  plant_unit: { id: string; site_id: string; version: number; name: string; name_key: string };
  person: { id: string; version: number; name: string; name_key: string; role: string };
  batch: { id: string; kind: BatchKind; name: string; number: string; name_key: string; number_key: string };
  joint: {
    id: string;
    unit_id: string;
    version: number;
    tag: string;
    tag_key: string;
    tag_sort: string;
    location: string;
    service: string;
    service_sort: string;
    flange: string;
    bolting: string;
    grade: string | null;
    search: string;
    data: string;
    last_event_kind: Generated<WorkKind | null>;
    last_event_at: Generated<string | null>;
    last_event_at_utc: Generated<string | null>;
    valve_key: Generated<string>;
  };
  /** Tags a joint is said to be confusable with, whether the register has them or not. */
  joint_confusable: { joint_id: string; tag_key: string };
  tool: {
    id: string;
    version: number;
    number: string;
    number_key: string;
    number_sort: string;
    serial: string;
    class: ToolClass;
    status: ToolData['status'];
    place: string;
    ratings: string;
    valid_until: Generated<string | null>;
    search: string;
    data: string;
    serial_key: string;
    holder_id: Generated<string | null>;
    /** Recorded tightenings and breakouts it was used in. */
    uses: Generated<number>;
  };
  certificate: {
    id: string;
    tool_id: string;
    number: string;
    number_key: string;
    laboratory: string;
    calibrated_on: string;
    valid_until: string;
    result: CertificateData['result'];
    condition: CertificateData['condition'];
    measured: CertificateData['measured']['kind'];
    data: string;
  };
  certificate_point: {
    certificate_id: string;
    position: number;
    direction: 'up' | 'down' | null;
    pressure_text: string;
    pressure_unit: string;
    pressure_pa: number;
    measured_text: string;
    measured_unit: string;
    measured_si: number;
  };
  site_row: {
    id: string;
    version: number;
    kind: SiteRowKind;
    key: string;
    name_key: string;
    source: string;
    retired: number;
    search: string;
    data: string;
  };
  pass_plan: {
    id: string;
    version: number;
    name: string;
    name_key: string;
    source: string;
    data: string;
    approved_by: string | null;
    approved_at: string | null;
  };
  /** One row per confirmed cell of a shipped table. */
  table_confirmation: {
    event_id: string;
    position: number;
    table_name: string;
    row_key: string;
    field: string;
    value: string;
    person_id: string;
    source_seen: string;
    happened_at: string;
  };
  tool_move: {
    event_id: string;
    tool_id: string;
    position: number;
    step: CustodyStep;
    from_status: ToolData['status'];
    to_status: ToolData['status'];
    happened_at: string;
    happened_at_utc: string;
    person_id: string;
    holder_id: string | null;
    condition: MoveData['condition'];
    place: string;
    reference: string;
    reason: string;
    kit_id: string | null;
  };
  /** A recorded use beyond what the tool may stand. */
  tool_overload: {
    event_id: string;
    tool_id: string;
    happened_at: string;
    happened_at_utc: string;
    text: string;
  };
  checklist: {
    id: string;
    version: number;
    name: string;
    name_key: string;
    kind: CheckKind;
    retired: number;
    data: string;
  };
  tool_check: {
    id: string;
    tool_id: string;
    kind: CheckKind;
    happened_at: string;
    happened_at_utc: string;
    person_id: string;
    checklist_id: string | null;
    checklist_version: number | null;
    result: CheckData['result'];
    /** Largest error of its comparisons, a fraction. */
    error: number | null;
    data: string;
  };
  tool_rule: { id: string; version: number; class: ToolClass; data: string };
  kit: {
    id: string;
    version: number;
    name: string;
    name_key: string;
    from_day: string;
    to_day: string;
    closed: number;
    data: string;
  };
  kit_tool: { kit_id: string; tool_id: string; position: number };
  kit_joint: { kit_id: string; joint_id: string; position: number };
  attachment_use: {
    event_id: string;
    attachment_hash: string;
    tool_id: string | null;
    owner_event_id: string | null;
    name: string;
    person_id: string;
    happened_at: string;
    remarks: string;
  };
  joint_attachment: {
    event_id: string;
    attachment_hash: string;
    joint_id: string;
    name: string;
    person_id: string;
    happened_at: string;
    remarks: string;
  };
  recall_case: {
    id: string;
    number: string;
    subject_kind: CaseSubject['kind'];
    tool_id: string | null;
    batch_id: string | null;
    basis_kind: CaseBasis['kind'];
    basis_event_id: string | null;
    /** In words, as they stood when it was opened. */
    subject: string;
    basis: string;
    happened_at: string;
    happened_at_utc: string;
    person_id: string;
    data: string;
  };
  recall_decision: {
    event_id: string;
    tightening_id: string;
    case_id: string;
    decision: CaseDecision;
    reason: string;
    happened_at: string;
    happened_at_utc: string;
    person_id: string;
  };
  recall_closure: {
    id: string;
    case_id: string;
    affected: number;
    decided: number;
    happened_at: string;
    happened_at_utc: string;
    person_id: string;
  };
  /** One row once an administrator has begun sign-in. */
  sign_in: { event_id: string; person_id: string; begun_at: string };
  person_roles: { person_id: string; version: number; roles: string };
  competence: {
    id: string;
    version: number;
    person_id: string;
    scheme: string;
    issued_on: string;
    /** As core works it out from scheme and paper; null when not known. */
    last_good_day: string | null;
    withdrawn: number;
    data: string;
  };
  /** In no event, and no projection of any. */
  person_secret: {
    person_id: string;
    version: number;
    function: 'scrypt';
    cost: number;
    block_size: number;
    parallelization: number;
    salt: Uint8Array;
    hash: Uint8Array;
    to_be_changed: number;
    changed_at: string;
  };
  /** Wrong secrets by name, and of all names together; in no event. */
  wrong_secret: { about: string; count: number; moment: string };
  signature: {
    id: string;
    event_id: string;
    hash: string;
    meaning: SignatureMeaning;
    person_id: string;
    known_by: 'secret' | 'name';
    signed_at: string;
  };
  /** Requests that were refused: a chain of its own, and no projection of events. */
  refusal: {
    id: string;
    origin_id: string;
    sequence: number;
    previous_hash: string;
    hash: string;
    body: string;
    request: string;
    person_id: string | null;
    refused_at: string;
  };
  /** What lists need; input and frozen card stand in the event's body. */
  setting: {
    id: string;
    number: string;
    kind: WorkKind;
    joint_id: string;
    joint_version: number;
    starts_on: string;
    ends_on: string;
    issued_at: string;
    issued_by: string;
    dial_value: number | null;
    dial_unit: string | null;
    dial_pa: number | null;
  };
  /** Refusals that were set aside when it was issued. */
  setting_override: { setting_id: string; code: string; reason: string };
  tightening: WorkColumns & TypedTorque & { bolts_tightened: number; final_pass_no_turn: number };
  breakout: WorkColumns & {
    readings: number;
    not_turned: number;
    torque_nm: number | null;
    highest_nm: number | null;
  };
  breakout_reading: TypedTorque & {
    breakout_id: string;
    bolt: number;
    outcome: 'turned' | 'would not turn' | 'cut';
  };
  /** What one crew did of one pass; the bolts stand in the event's body. */
  pass_record: {
    id: string;
    run_id: string;
    joint_id: string;
    setting_id: string | null;
    bolt_set: number;
    pass: number;
    of_passes: number;
    round: number;
    name: string;
    bolts_done: number;
    last_bolt: number | null;
    stopped: (typeof STOP_REASONS)[number] | null;
    started_at: string;
    started_at_utc: string;
    ended_at: string;
    ended_at_utc: string;
    flags: string;
  };
  tightening_pass: { tightening_id: string; pass_id: string; position: number };
  /** One row per joint that somebody has assessed; a joint without one is unassessed. */
  joint_standing: {
    joint_id: string;
    state: JointState;
    containment: Containment;
    class_name: string | null;
    class_level: Criticality | null;
    class_rule_id: string | null;
    since: string | null;
    since_utc: string | null;
    pass: number | null;
    of_passes: number | null;
    last_bolt: number | null;
    isolation_ref: string | null;
    permit_ref: string | null;
    deviation_id: string | null;
    /** All of it, as JSON. */
    standing: string;
  };
  class_rule: {
    id: string;
    version: number;
    name: string;
    name_key: string;
    level: Criticality;
    retired: number;
    data: string;
  };
  /** Which tightening of its class a record was. */
  class_tightening: { event_id: string; class_key: string; ordinal: number };
  deviation: {
    id: string;
    joint_id: string;
    opened_at: string;
    opened_at_utc: string;
    state: JointState;
    if_accepted: JointState;
    works: string;
    decision_event_id: string | null;
    decision: DeviationDecision | null;
    reason: string | null;
    person_id: string | null;
    decided_at: string | null;
  };
  /** A leak with what became of it: a report, or a test that failed. */
  leak: {
    id: string;
    joint_id: string;
    origin: LeakRow['origin'];
    phase: LeakRow['phase'];
    /** Make-up of the joint it happened in. */
    make_up: number;
    happened_at: string;
    happened_at_utc: string;
    /** As they are known now, as JSON; what was said first stands in the event. */
    causes: string;
    closed_by: string | null;
    closed_at: string | null;
    closed_at_utc: string | null;
  };
  cycle_count: {
    event_id: string;
    joint_id: string;
    starts_on: string;
    ends_on: string;
    from_utc: string;
    until_utc: string;
    cycles: number;
  };
  campaign: {
    id: string;
    version: number;
    name: string;
    name_key: string;
    starts_at: string;
    starts_at_utc: string;
    ends_at: string;
    ends_at_utc: string;
    closed: number;
    data: string;
  };
  job: {
    id: string;
    campaign_id: string;
    version: number;
    number: string;
    number_key: string;
    number_sort: string;
    joint_id: string;
    scope: JobScope;
    system_key: string;
    test_pack_key: string;
    dropped: number;
    search: string;
    data: string;
  };
  /** Every version of a job as it was saved. */
  job_version: {
    event_id: string;
    job_id: string;
    campaign_id: string;
    version: number;
    happened_at: string;
    happened_at_utc: string;
    person_id: string | null;
    reason: string;
    data: string;
  };
  /** Work in progress; written over, in no chain. */
  draft: {
    kind: string;
    subject_id: string;
    writer: string;
    version: number;
    data: string;
    saved_at: string;
  };
}

export type ToolRole =
  | 'saved'
  | 'calibrated'
  | 'calibrated with'
  | ToolClass
  | 'moved'
  | 'checked'
  | 'in kit'
  | 'attached'
  | 'case';
export type PersonRole =
  | 'issued'
  | 'did the work'
  | 'approved'
  | 'confirmed'
  | 'set the gauge'
  | 'confirmed the setting'
  | 'handed over'
  | 'took over'
  | 'checked'
  | 'attached'
  | 'opened the case'
  | 'decided'
  | 'closed the case'
  | 'counted'
  | 'changed the job'
  | 'took the step'
  | 'witnessed'
  | 'checked which joint it is'
  /** Sign-in, secret, roles or competence of this person. */
  | 'access'
  | 'signed';

interface WorkColumns {
  id: string;
  joint_id: string;
  setting_id: string | null;
  happened_at: string;
  happened_at_utc: string;
  flags: string;
}

/** What was typed, beside the torque it stands for and how that is known. */
interface TypedTorque {
  dialled_text: string | null;
  dialled_unit: string | null;
  dialled_pa: number | null;
  torque_text: string | null;
  torque_unit: string | null;
  torque_nm: number | null;
  basis: string;
}
