CREATE TABLE attachment (
       hash text primary key check (length(hash) = 64 and hash not glob '*[^0-9a-f]*'),
       name text not null check (length(name) between 1 and 260),
       media_type text not null,
       size integer not null check (size >= 0),
       added_on text not null check (added_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]')
     ) strict;

CREATE TABLE attachment_use (
       event_id text primary key references event (id) on delete restrict,
       attachment_hash text not null check (length(attachment_hash) = 64 and attachment_hash not glob '*[^0-9a-f]*') references attachment (hash) on delete restrict,
       tool_id text references tool (id) on delete restrict,
       owner_event_id text references event (id) on delete restrict,
       name text not null check (length(name) between 1 and 200),
       person_id text not null references person (id) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       remarks text not null check (length(remarks) <= 300),
       check ((tool_id is null) <> (owner_event_id is null))
     ) strict;

CREATE TABLE batch (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       kind text not null check (kind in ('lubricant', 'gasket', 'stud', 'nut')),
       name text not null check (length(name) between 1 and 120),
       number text not null check (length(number) between 1 and 80),
       name_key text not null,
       number_key text not null,
       unique (kind, name_key, number_key)
     ) strict;

CREATE TABLE breakout (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       setting_id text references setting (id) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       flags text not null check (json_valid(flags)),
       readings integer not null check (readings between 0 and 400),
       not_turned integer not null check (not_turned between 0 and 400),
       torque_nm real check (torque_nm between 0 and 1000000),
       highest_nm real check (highest_nm between 0 and 1000000),
       check ((torque_nm is null) = (highest_nm is null))
     ) strict;

CREATE TABLE breakout_reading (
       breakout_id text not null references breakout (id) on delete restrict,
       bolt integer not null check (bolt between 1 and 400),
       outcome text not null check (outcome in ('turned', 'would not turn', 'cut')),
       
       dialled_text text,
       dialled_unit text,
       dialled_pa real check (dialled_pa between 0 and 400000000),
       torque_text text,
       torque_unit text,
       torque_nm real check (torque_nm between 0 and 1000000),
       basis text not null,
       check ((dialled_text is null) = (dialled_pa is null) and (dialled_unit is null) = (dialled_pa is null)),
       primary key (breakout_id, bolt)
     ) strict, without rowid;

CREATE TABLE campaign (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       starts_at text not null check (starts_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       starts_at_utc text not null check (starts_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       ends_at text not null check (ends_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       ends_at_utc text not null check (ends_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z' and ends_at_utc > starts_at_utc),
       closed integer not null check (closed in (0, 1)),
       data text not null check (json_valid(data))
     ) strict;

CREATE TABLE "certificate" (
       id text primary key references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       number text not null check (length(number) between 1 and 60),
       number_key text not null,
       laboratory text not null check (length(laboratory) between 1 and 160),
       calibrated_on text not null check (calibrated_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       valid_until text not null check (valid_until glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       result text not null check (result in ('within limits', 'outside limits', 'no limits stated')),
       condition text not null check (condition in ('as found', 'as left')),
       measured text not null check (measured in ('pressure-torque', 'gauge', 'hand torque')),
       data text not null check (json_valid(data)),
       unique (tool_id, number_key),
       check (valid_until >= calibrated_on)
     ) strict;

CREATE TABLE certificate_point (
       certificate_id text not null references certificate (id) on delete restrict,
       position integer not null check (position between 0 and 199),
       direction text check (direction in ('up', 'down')),
       pressure_text text not null,
       pressure_unit text not null,
       pressure_pa real not null check (pressure_pa between 0 and 400000000),
       measured_text text not null,
       measured_unit text not null,
       measured_si real not null check (measured_si between 0 and 400000000),
       primary key (certificate_id, position)
     ) strict, without rowid;

CREATE TABLE checklist (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 80),
       name_key text not null unique,
       kind text not null check (kind in ('comparison', 'zero of the gauge', 'function', 'visual', 'seal inspection', 'leak test', 'pressure test', 'fasteners', 'cleaning and lubrication', 'repair')),
       retired integer not null check (retired in (0, 1)),
       data text not null check (json_valid(data))
     ) strict;

CREATE TABLE class_rule (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 40),
       name_key text not null unique,
       level text not null check (level in ('mild', 'intermediate', 'critical')),
       retired integer not null check (retired in (0, 1)),
       data text not null check (json_valid(data))
     ) strict;

CREATE TABLE class_tightening (
       event_id text primary key references event (id) on delete restrict,
       class_key text not null check (length(class_key) between 1 and 60),
       ordinal integer not null check (ordinal >= 1)
     ) strict;

CREATE TABLE competence (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       person_id text not null references person (id) on delete restrict,
       scheme text not null check (length(scheme) between 1 and 120),
       issued_on text not null check (issued_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       last_good_day text check (last_good_day glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       withdrawn integer not null check (withdrawn in (0, 1)),
       data text not null check (json_valid(data)),
       check (last_good_day >= issued_on)
     ) strict;

CREATE TABLE cycle_count (
       event_id text not null references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       starts_on text not null check (starts_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       ends_on text not null check (ends_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]' and ends_on >= starts_on),
       from_utc text not null check (from_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       until_utc text not null check (until_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z' and until_utc > from_utc),
       cycles integer not null check (cycles between 0 and 100000),
       primary key (event_id, joint_id)
     ) strict, without rowid;

CREATE TABLE deviation (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       opened_at text not null check (opened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       opened_at_utc text not null check (opened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       state text not null check (state in ('unassessed', 'assessed', 'scheduled', 'isolated', 'released to break', 'broken', 'inspected', 'held', 'made up', 'tightening', 'tightened', 'witnessed', 'tested', 'test failed', 'reinstated', 'in service', 'leak watch')),
       if_accepted text not null check (if_accepted in ('unassessed', 'assessed', 'scheduled', 'isolated', 'released to break', 'broken', 'inspected', 'held', 'made up', 'tightening', 'tightened', 'witnessed', 'tested', 'test failed', 'reinstated', 'in service', 'leak watch')),
       works text not null check (json_valid(works)),
       decision_event_id text references event (id) on delete restrict,
       decision text check (decision in ('accept as done', 'to be done again', 'hold')),
       reason text check (length(reason) between 1 and 1000),
       person_id text references person (id) on delete restrict,
       decided_at text check (decided_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       check ((decision_event_id is null) = (decision is null)),
       check ((decision is null) = (reason is null)),
       check ((decision is null) = (person_id is null)),
       check ((decision is null) = (decided_at is null))
     ) strict;

CREATE TABLE draft (
       kind text not null check (length(kind) between 1 and 60),
       subject_id text not null check (length(subject_id) = 36 and subject_id glob '????????-????-????-????-????????????'),
       writer text not null check (length(writer) = 36 and writer glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       data text not null check (length(data) between 1 and 65536),
       saved_at text not null check (saved_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       primary key (kind, subject_id)
     ) strict, without rowid;

CREATE TABLE "event" (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       origin_id text not null references origin (id) on delete restrict,
       sequence integer not null check (sequence >= 1),
       previous_hash text not null check (length(previous_hash) = 64 and previous_hash not glob '*[^0-9a-f]*'),
       hash text not null unique check (length(hash) = 64 and hash not glob '*[^0-9a-f]*'),
       body text not null check (json_valid(body)),
       body_version integer not null check (body_version >= 1),
       kind text not null references event_kind (name) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       recorded_at text not null check (recorded_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       supersedes text references event (id) on delete restrict,
       unique (origin_id, sequence)
     ) strict;

CREATE TABLE event_attachment (
       event_id text not null references event (id) on delete restrict,
       attachment_hash text not null references attachment (hash) on delete restrict,
       primary key (event_id, attachment_hash)
     ) strict, without rowid;

CREATE TABLE event_batch (
       event_id text not null references event (id) on delete restrict,
       batch_id text not null references batch (id) on delete restrict,
       primary key (event_id, batch_id)
     ) strict, without rowid;

CREATE TABLE event_joint (
       event_id text not null references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       primary key (event_id, joint_id)
     ) strict, without rowid;

CREATE TABLE event_kind (name text primary key) strict, without rowid;

CREATE TABLE "event_person" (
       event_id text not null references event (id) on delete restrict,
       person_id text not null references person (id) on delete restrict,
       role text not null references person_part (name) on delete restrict,
       position integer not null check (position >= 0),
       primary key (event_id, person_id, role)
     ) strict, without rowid;

CREATE TABLE "event_tool" (
       event_id text not null references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       role text not null references tool_part (name) on delete restrict,
       position integer not null check (position >= 0),
       used_at text check (used_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       primary key (event_id, tool_id, role)
     ) strict, without rowid;

CREATE TABLE job (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       campaign_id text not null references campaign (id) on delete restrict,
       version integer not null check (version >= 1),
       number text not null check (length(number) between 1 and 40),
       number_key text not null,
       number_sort text not null,
       joint_id text not null references joint (id) on delete restrict,
       scope text not null check (scope in ('break', 'make', 'break and make')),
       system_key text not null,
       test_pack_key text not null,
       dropped integer not null check (dropped in (0, 1)),
       search text not null,
       data text not null check (json_valid(data)),
       unique (campaign_id, number_key)
     ) strict;

CREATE TABLE job_version (
       event_id text primary key references event (id) on delete restrict,
       job_id text not null references job (id) on delete restrict,
       campaign_id text not null references campaign (id) on delete restrict,
       version integer not null check (version >= 1),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text references person (id) on delete restrict,
       reason text not null,
       data text not null check (json_valid(data)),
       unique (job_id, version)
     ) strict;

CREATE TABLE joint (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       unit_id text not null references plant_unit (id) on delete restrict,
       version integer not null check (version >= 1),
       tag text not null check (length(tag) between 1 and 60),
       tag_key text not null unique,
       tag_sort text not null,
       location text not null check (length(location) <= 300),
       service text not null check (length(service) <= 120),
       service_sort text not null,
       flange text not null,
       bolting text not null,
       grade text,
       search text not null,
       data text not null check (json_valid(data)),
       last_event_kind text check (last_event_kind in ('tightening', 'breakout')),
       last_event_at text check (last_event_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       last_event_at_utc text check (last_event_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'), valve_key text not null default '',
       check ((last_event_kind is null) = (last_event_at is null)
          and (last_event_at is null) = (last_event_at_utc is null))
     ) strict;

CREATE TABLE joint_attachment (
       event_id text primary key references event (id) on delete restrict,
       attachment_hash text not null check (length(attachment_hash) = 64 and attachment_hash not glob '*[^0-9a-f]*') references attachment (hash) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       name text not null check (length(name) between 1 and 200),
       person_id text not null references person (id) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       remarks text not null check (length(remarks) <= 300)
     ) strict;

CREATE TABLE joint_confusable (
       joint_id text not null references joint (id) on delete restrict,
       tag_key text not null check (length(tag_key) between 1 and 120),
       primary key (joint_id, tag_key)
     ) strict, without rowid;

CREATE TABLE joint_standing (
       joint_id text primary key references joint (id) on delete restrict,
       state text not null check (state in ('unassessed', 'assessed', 'scheduled', 'isolated', 'released to break', 'broken', 'inspected', 'held', 'made up', 'tightening', 'tightened', 'witnessed', 'tested', 'test failed', 'reinstated', 'in service', 'leak watch')),
       containment text not null check (containment in ('open', 'closed', 'not followed')),
       class_name text,
       class_level text check (class_level in ('mild', 'intermediate', 'critical')),
       class_rule_id text references class_rule (id) on delete restrict,
       since text check (since glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       since_utc text check (since_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       pass integer check (pass >= 1),
       of_passes integer check (of_passes >= pass),
       last_bolt integer check (last_bolt between 1 and 400),
       isolation_ref text,
       permit_ref text,
       deviation_id text references event (id) on delete restrict,
       standing text not null check (json_valid(standing)),
       check ((class_name is null) = (class_level is null)),
       check ((pass is null) = (of_passes is null))
     ) strict;

CREATE TABLE kit (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       from_day text not null check (from_day glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       to_day text not null check (to_day glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       closed integer not null check (closed in (0, 1)),
       data text not null check (json_valid(data)),
       check (to_day >= from_day)
     ) strict;

CREATE TABLE kit_joint (
       kit_id text not null references kit (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       position integer not null check (position between 0 and 199),
       primary key (kit_id, joint_id)
     ) strict, without rowid;

CREATE TABLE kit_tool (
       kit_id text not null references kit (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       position integer not null check (position between 0 and 39),
       primary key (kit_id, tool_id)
     ) strict, without rowid;

CREATE TABLE "kysely_migration" ("name" varchar(255) not null primary key, "timestamp" varchar(255) not null);

CREATE TABLE "kysely_migration_lock" ("id" varchar(255) not null primary key, "is_locked" integer default 0 not null);

CREATE TABLE leak (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       origin text not null check (origin in ('report', 'failed test')),
       phase text not null check (phase in ('leak test', 'start-up', 'in service', 'not known')),
       make_up integer not null check (make_up >= 0),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       causes text not null check (json_valid(causes)),
       closed_by text references event (id) on delete restrict,
       closed_at text check (closed_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       closed_at_utc text check (closed_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       check ((closed_by is null) = (closed_at is null)),
       check ((closed_by is null) = (closed_at_utc is null))
     ) strict;

CREATE TABLE origin (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       name text not null check (length(name) between 1 and 120),
       created_at text not null check (created_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z')
     ) strict;

CREATE TABLE pass_plan (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 80),
       name_key text not null unique,
       source text not null check (length(source) between 1 and 300),
       data text not null check (json_valid(data)),
       approved_by text references person (id) on delete restrict,
       approved_at text check (approved_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       check ((approved_by is null) = (approved_at is null))
     ) strict;

CREATE TABLE pass_record (
       id text primary key references event (id) on delete restrict,
       run_id text not null check (length(run_id) = 36 and run_id glob '????????-????-????-????-????????????'),
       joint_id text not null references joint (id) on delete restrict,
       setting_id text references setting (id) on delete restrict,
       bolt_set integer not null check (bolt_set between 0 and 8),
       pass integer not null check (pass between 1 and of_passes),
       of_passes integer not null check (of_passes between 1 and 40),
       round integer not null check (round between 1 and 20),
       name text not null check (length(name) between 1 and 80),
       bolts_done integer not null check (bolts_done between 0 and 400),
       last_bolt integer check (last_bolt between 1 and 400),
       stopped text check (stopped in ('shift change', 'tool or pump', 'nut or stud', 'alarm or permit', 'weather', 'other')),
       started_at text not null check (started_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       started_at_utc text not null check (started_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       ended_at text not null check (ended_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       ended_at_utc text not null check (ended_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       flags text not null check (json_valid(flags)),
       check (ended_at_utc >= started_at_utc),
       check ((last_bolt is null) = (bolts_done = 0))
     ) strict;

CREATE TABLE person (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 120),
       name_key text not null,
       role text not null check (length(role) <= 80)
     ) strict;

CREATE TABLE person_part (name text primary key) strict, without rowid;

CREATE TABLE person_roles (
       person_id text primary key references person (id) on delete restrict,
       version integer not null check (version >= 1),
       roles text not null check (json_valid(roles))
     ) strict;

CREATE TABLE person_secret (
       person_id text primary key references person (id) on delete restrict,
       version integer not null check (version >= 1),
       function text not null check (function in ('scrypt')),
       cost integer not null check (cost between 1024 and 16777216),
       block_size integer not null check (block_size between 1 and 64),
       parallelization integer not null check (parallelization between 1 and 64),
       salt blob not null check (length(salt) = 16),
       hash blob not null check (length(hash) = 32),
       to_be_changed integer not null check (to_be_changed in (0, 1)),
       changed_at text not null check (changed_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z')
     ) strict;

CREATE TABLE plant_unit (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       site_id text not null references site (id) on delete restrict,
       version integer not null check (version >= 1),
       name text not null check (length(name) between 1 and 120),
       name_key text not null unique
     ) strict;

CREATE TABLE recall_case (
       id text primary key references event (id) on delete restrict,
       number text not null unique check (number glob 'OT-[0-9][0-9][0-9][0-9]*'),
       subject_kind text not null check (subject_kind in ('tool', 'batch')),
       tool_id text references tool (id) on delete restrict,
       batch_id text references batch (id) on delete restrict,
       basis_kind text not null check (basis_kind in ('certificate', 'check', 'statement')),
       basis_event_id text references event (id) on delete restrict,
       subject text not null check (length(subject) between 1 and 300),
       basis text not null check (length(basis) between 1 and 600),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text not null references person (id) on delete restrict,
       data text not null check (json_valid(data)),
       check ((tool_id is null) = (subject_kind = 'batch') and (batch_id is null) = (subject_kind = 'tool')),
       check ((basis_event_id is null) = (basis_kind = 'statement'))
     ) strict;

CREATE TABLE recall_closure (
       id text primary key references event (id) on delete restrict,
       case_id text not null unique references recall_case (id) on delete restrict,
       affected integer not null check (affected >= 0),
       decided integer not null check (decided between 0 and affected),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text not null references person (id) on delete restrict
     ) strict;

CREATE TABLE recall_decision (
       event_id text not null references event (id) on delete restrict,
       tightening_id text not null references tightening (id) on delete restrict,
       case_id text not null references recall_case (id) on delete restrict,
       decision text not null check (decision in ('accept', 'retighten', 'monitor', 'replace the gasket')),
       reason text not null check (length(reason) between 1 and 500),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text not null references person (id) on delete restrict,
       primary key (event_id, tightening_id)
     ) strict, without rowid;

CREATE TABLE refusal (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       origin_id text not null references origin (id) on delete restrict,
       sequence integer not null check (sequence >= 1),
       previous_hash text not null check (length(previous_hash) = 64 and previous_hash not glob '*[^0-9a-f]*'),
       hash text not null unique check (length(hash) = 64 and hash not glob '*[^0-9a-f]*'),
       body text not null check (json_valid(body)),
       request text not null check (length(request) between 1 and 60),
       person_id text references person (id) on delete restrict,
       refused_at text not null check (refused_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       unique (origin_id, sequence)
     ) strict;

CREATE TABLE request_receipt (
       key text primary key check (length(key) = 36 and key glob '????????-????-????-????-????????????'),
       request text not null,
       input_hash text not null check (length(input_hash) = 64 and input_hash not glob '*[^0-9a-f]*'),
       answer text not null check (json_valid(answer)),
       recorded_at text not null check (recorded_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z')
     ) strict;

CREATE TABLE setting (
       id text primary key references event (id) on delete restrict,
       number text not null unique check (number glob 'S-[0-9][0-9][0-9][0-9]*'),
       kind text not null check (kind in ('tightening', 'breakout')),
       joint_id text not null references joint (id) on delete restrict,
       joint_version integer not null check (joint_version >= 1),
       starts_on text not null check (starts_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       ends_on text not null check (ends_on glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       issued_at text not null check (issued_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       issued_by text not null references person (id) on delete restrict,
       dial_value real check (dial_value between 0 and 400000000),
       dial_unit text,
       dial_pa real check (dial_pa between 0 and 400000000),
       check (ends_on >= starts_on),
       check ((dial_value is null) = (dial_pa is null) and (dial_unit is null) = (dial_pa is null))
     ) strict;

CREATE TABLE setting_override (
       setting_id text not null references setting (id) on delete restrict,
       code text not null check (length(code) between 1 and 60),
       reason text not null check (length(reason) between 1 and 500),
       primary key (setting_id, code)
     ) strict, without rowid;

CREATE TABLE sign_in (
       event_id text primary key references event (id) on delete restrict,
       person_id text not null references person (id) on delete restrict,
       begun_at text not null check (begun_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z')
     ) strict;

CREATE TABLE signature (
       id text primary key references event (id) on delete restrict,
       event_id text not null references event (id) on delete restrict,
       hash text not null check (length(hash) = 64 and hash not glob '*[^0-9a-f]*'),
       meaning text not null check (meaning in ('did', 'witnessed', 'approved', 'reviewed')),
       person_id text not null references person (id) on delete restrict,
       known_by text not null check (known_by in ('secret', 'name')),
       signed_at text not null check (signed_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       unique (event_id, person_id, meaning)
     ) strict;

CREATE TABLE site (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       name text not null check (length(name) between 1 and 120),
       time_zone text not null check (length(time_zone) between 1 and 60),
       demo integer not null check (demo in (0, 1))
     ) strict;

CREATE TABLE site_row (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       kind text not null check (kind in ('flange', 'stud grade', 'gasket', 'lubricant')),
       key text not null check (length(key) between 1 and 60),
       name_key text not null,
       source text not null check (length(source) between 1 and 300),
       retired integer not null check (retired in (0, 1)),
       search text not null,
       data text not null check (json_valid(data)),
       unique (kind, name_key)
     ) strict;

CREATE TABLE table_confirmation (
       event_id text not null references event (id) on delete restrict,
       position integer not null check (position between 0 and 19),
       table_name text not null check (length(table_name) between 1 and 60),
       row_key text not null check (length(row_key) between 1 and 80),
       field text not null check (length(field) between 1 and 40),
       value text not null check (length(value) between 1 and 80),
       person_id text not null references person (id) on delete restrict,
       source_seen text not null check (length(source_seen) between 1 and 300),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       primary key (event_id, position)
     ) strict, without rowid;

CREATE TABLE tightening (
       id text primary key references event (id) on delete restrict,
       joint_id text not null references joint (id) on delete restrict,
       setting_id text references setting (id) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       flags text not null check (json_valid(flags)),
       bolts_tightened integer not null check (bolts_tightened between 0 and 400),
       final_pass_no_turn integer not null check (final_pass_no_turn in (0, 1)),
       
       dialled_text text,
       dialled_unit text,
       dialled_pa real check (dialled_pa between 0 and 400000000),
       torque_text text,
       torque_unit text,
       torque_nm real check (torque_nm between 0 and 1000000),
       basis text not null,
       check ((dialled_text is null) = (dialled_pa is null) and (dialled_unit is null) = (dialled_pa is null))
     ) strict;

CREATE TABLE tightening_pass (
       tightening_id text not null references tightening (id) on delete restrict,
       pass_id text not null references pass_record (id) on delete restrict,
       position integer not null check (position >= 0),
       primary key (tightening_id, pass_id)
     ) strict, without rowid;

CREATE TABLE "tool" (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       number text not null check (length(number) between 1 and 40),
       number_key text not null unique,
       number_sort text not null,
       serial text not null check (length(serial) <= 80),
       class text not null references tool_class (name) on delete restrict,
       status text not null check (status in ('available', 'issued', 'at the laboratory', 'quarantined', 'scrapped')),
       place text not null check (length(place) <= 120),
       ratings text not null,
       valid_until text check (valid_until glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
       search text not null,
       data text not null check (json_valid(data)),
       serial_key text not null default '' check (length(serial_key) <= 400),
       holder_id text references person (id) on delete restrict,
       uses integer not null default 0 check (uses >= 0)
     ) strict;

CREATE TABLE tool_check (
       id text primary key references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       kind text not null check (kind in ('comparison', 'zero of the gauge', 'function', 'visual', 'seal inspection', 'leak test', 'pressure test', 'fasteners', 'cleaning and lubrication', 'repair')),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text not null references person (id) on delete restrict,
       checklist_id text references checklist (id) on delete restrict,
       checklist_version integer check (checklist_version >= 1),
       result text not null check (result in ('passed', 'failed')),
       error real check (error between -1 and 1000000),
       data text not null check (json_valid(data)),
       check ((checklist_id is null) = (checklist_version is null))
     ) strict;

CREATE TABLE tool_class (name text primary key) strict, without rowid;

CREATE TABLE tool_move (
       event_id text not null references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       position integer not null check (position between 0 and 39),
       step text not null check (step in ('issue', 'return', 'send to the laboratory', 'take back from the laboratory', 'quarantine', 'release from quarantine', 'scrap')),
       from_status text not null check (from_status in ('available', 'issued', 'at the laboratory', 'quarantined', 'scrapped')),
       to_status text not null check (to_status in ('available', 'issued', 'at the laboratory', 'quarantined', 'scrapped')),
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       person_id text not null references person (id) on delete restrict,
       holder_id text references person (id) on delete restrict,
       condition text check (condition in ('good', 'to be looked at', 'damaged')),
       place text not null check (length(place) <= 120),
       reference text not null check (length(reference) <= 120),
       reason text not null check (length(reason) <= 500),
       kit_id text references kit (id) on delete restrict,
       primary key (event_id, tool_id)
     ) strict, without rowid;

CREATE TABLE tool_overload (
       event_id text not null references event (id) on delete restrict,
       tool_id text not null references tool (id) on delete restrict,
       happened_at text not null check (happened_at glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]*'),
       happened_at_utc text not null check (happened_at_utc glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z'),
       text text not null check (length(text) between 1 and 400),
       primary key (event_id, tool_id)
     ) strict, without rowid;

CREATE TABLE tool_part (name text primary key) strict, without rowid;

CREATE TABLE tool_rule (
       id text primary key check (length(id) = 36 and id glob '????????-????-????-????-????????????'),
       version integer not null check (version >= 1),
       class text not null unique references tool_class (name) on delete restrict,
       data text not null check (json_valid(data))
     ) strict;

CREATE TABLE wrong_secret (
       about text primary key check (length(about) between 1 and 20),
       count integer not null check (count >= 1),
       moment text not null check (moment glob '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:*Z')
     ) strict, without rowid;

CREATE INDEX attachment_use_by_event on attachment_use (owner_event_id) where owner_event_id is not null;

CREATE INDEX attachment_use_by_hash on attachment_use (attachment_hash);

CREATE INDEX attachment_use_by_person on attachment_use (person_id);

CREATE INDEX attachment_use_by_tool on attachment_use (tool_id) where tool_id is not null;

CREATE INDEX breakout_by_joint on breakout (joint_id, happened_at_utc);

CREATE INDEX breakout_by_setting on breakout (setting_id) where setting_id is not null;

CREATE UNIQUE INDEX campaign_open_name on campaign (name_key) where closed = 0;

CREATE INDEX certificate_by_tool on certificate (tool_id, calibrated_on);

CREATE INDEX class_tightening_by_class on class_tightening (class_key, ordinal);

CREATE INDEX competence_by_person on competence (person_id, issued_on);

CREATE INDEX cycle_count_by_joint on cycle_count (joint_id, from_utc);

CREATE INDEX deviation_by_joint on deviation (joint_id, opened_at_utc);

CREATE INDEX deviation_open on deviation (opened_at_utc, id) where decision is null;

CREATE INDEX event_attachment_hash on event_attachment (attachment_hash);

CREATE INDEX event_batch_trace on event_batch (batch_id, event_id);

CREATE INDEX event_joint_history on event_joint (joint_id, event_id);

CREATE INDEX event_kind_time on event (kind, happened_at_utc);

CREATE INDEX event_person_trace on event_person (person_id, event_id);

CREATE INDEX event_supersedes on event (supersedes) where supersedes is not null;

CREATE INDEX event_tool_trace on event_tool (tool_id, event_id);

CREATE INDEX event_tool_use on event_tool (tool_id, used_at) where used_at is not null;

CREATE INDEX job_by_campaign on job (campaign_id, dropped, number_sort, id);

CREATE INDEX job_by_joint on job (joint_id);

CREATE INDEX job_version_by_campaign on job_version (campaign_id, happened_at_utc, event_id);

CREATE INDEX joint_attachment_by_hash on joint_attachment (attachment_hash);

CREATE INDEX joint_attachment_by_joint on joint_attachment (joint_id);

CREATE INDEX joint_attachment_by_person on joint_attachment (person_id);

CREATE INDEX joint_by_last_event on joint (last_event_at_utc, tag_sort, id);

CREATE INDEX joint_by_looks on joint (unit_id, flange, tag_sort);

CREATE INDEX joint_by_service on joint (service_sort, tag_sort, id);

CREATE INDEX joint_by_tag on joint (tag_sort, id);

CREATE INDEX joint_by_unit on joint (unit_id, tag_sort);

CREATE INDEX joint_by_valve on joint (valve_key) where valve_key <> '';

CREATE INDEX joint_confusable_by_tag on joint_confusable (tag_key, joint_id);

CREATE INDEX joint_standing_by_deviation on joint_standing (deviation_id) where deviation_id is not null;

CREATE INDEX joint_standing_by_rule on joint_standing (class_rule_id) where class_rule_id is not null;

CREATE INDEX joint_standing_by_state on joint_standing (state, joint_id);

CREATE INDEX kit_by_day on kit (closed, from_day);

CREATE INDEX kit_joint_by_joint on kit_joint (joint_id);

CREATE INDEX kit_tool_by_tool on kit_tool (tool_id);

CREATE INDEX leak_by_closing on leak (closed_by) where closed_by is not null;

CREATE INDEX leak_by_joint on leak (joint_id, happened_at_utc);

CREATE INDEX leak_by_time on leak (happened_at_utc, id);

CREATE INDEX pass_plan_approved_by on pass_plan (approved_by) where approved_by is not null;

CREATE INDEX pass_record_by_joint on pass_record (joint_id, ended_at_utc, id);

CREATE INDEX pass_record_by_run on pass_record (run_id, ended_at_utc, id);

CREATE INDEX pass_record_by_setting on pass_record (setting_id) where setting_id is not null;

CREATE INDEX person_by_name on person (name_key, id);

CREATE INDEX recall_case_by_basis on recall_case (basis_event_id) where basis_event_id is not null;

CREATE INDEX recall_case_by_batch on recall_case (batch_id) where batch_id is not null;

CREATE INDEX recall_case_by_person on recall_case (person_id);

CREATE INDEX recall_case_by_time on recall_case (happened_at_utc);

CREATE INDEX recall_case_by_tool on recall_case (tool_id) where tool_id is not null;

CREATE INDEX recall_closure_by_person on recall_closure (person_id);

CREATE INDEX recall_decision_by_case on recall_decision (case_id, tightening_id);

CREATE INDEX recall_decision_by_person on recall_decision (person_id);

CREATE INDEX recall_decision_by_tightening on recall_decision (tightening_id);

CREATE INDEX refusal_by_person on refusal (person_id) where person_id is not null;

CREATE INDEX refusal_by_time on refusal (refused_at, id);

CREATE INDEX setting_by_date on setting (issued_at);

CREATE INDEX setting_by_joint on setting (joint_id, issued_at);

CREATE INDEX signature_by_person on signature (person_id, signed_at);

CREATE INDEX table_confirmation_by_cell on table_confirmation (table_name, row_key, field);

CREATE INDEX table_confirmation_by_person on table_confirmation (person_id);

CREATE INDEX tightening_by_joint on tightening (joint_id, happened_at_utc);

CREATE INDEX tightening_by_setting on tightening (setting_id) where setting_id is not null;

CREATE INDEX tightening_pass_by_pass on tightening_pass (pass_id);

CREATE INDEX tool_by_class on tool (class, number_sort);

CREATE INDEX tool_by_holder on tool (holder_id) where holder_id is not null;

CREATE INDEX tool_by_number on tool (number_sort, id);

CREATE INDEX tool_by_serial on tool (serial_key, class) where serial_key <> '';

CREATE INDEX tool_by_status on tool (status, number_sort);

CREATE INDEX tool_by_valid_until on tool (valid_until, number_sort);

CREATE INDEX tool_check_by_checklist on tool_check (checklist_id) where checklist_id is not null;

CREATE INDEX tool_check_by_person on tool_check (person_id);

CREATE INDEX tool_check_by_tool on tool_check (tool_id, happened_at_utc);

CREATE INDEX tool_move_by_holder on tool_move (holder_id) where holder_id is not null;

CREATE INDEX tool_move_by_kit on tool_move (kit_id) where kit_id is not null;

CREATE INDEX tool_move_by_person on tool_move (person_id);

CREATE INDEX tool_move_by_tool on tool_move (tool_id, happened_at_utc);

CREATE INDEX tool_overload_by_tool on tool_overload (tool_id, happened_at_utc);

CREATE TRIGGER attachment_no_delete before delete on attachment begin select raise(abort, 'attachment is append-only'); end;

CREATE TRIGGER attachment_no_reinsert before insert on attachment
       when exists (select 1 from attachment where hash = new.hash) begin select raise(abort, 'attachment is append-only'); end;

CREATE TRIGGER attachment_no_update before update on attachment begin select raise(abort, 'attachment is append-only'); end;

CREATE TRIGGER attachment_use_no_delete before delete on attachment_use begin select raise(abort, 'attachment_use is append-only'); end;

CREATE TRIGGER attachment_use_no_reinsert before insert on attachment_use
       when exists (select 1 from attachment_use where event_id = new.event_id) begin select raise(abort, 'attachment_use is append-only'); end;

CREATE TRIGGER attachment_use_no_update before update on attachment_use begin select raise(abort, 'attachment_use is append-only'); end;

CREATE TRIGGER breakout_no_delete before delete on breakout begin select raise(abort, 'breakout is append-only'); end;

CREATE TRIGGER breakout_no_reinsert before insert on breakout
       when exists (select 1 from breakout where id = new.id) begin select raise(abort, 'breakout is append-only'); end;

CREATE TRIGGER breakout_no_update before update on breakout begin select raise(abort, 'breakout is append-only'); end;

CREATE TRIGGER breakout_reading_no_delete before delete on breakout_reading begin select raise(abort, 'breakout_reading is append-only'); end;

CREATE TRIGGER breakout_reading_no_reinsert before insert on breakout_reading
       when exists (select 1 from breakout_reading where breakout_id = new.breakout_id and bolt = new.bolt) begin select raise(abort, 'breakout_reading is append-only'); end;

CREATE TRIGGER breakout_reading_no_update before update on breakout_reading begin select raise(abort, 'breakout_reading is append-only'); end;

CREATE TRIGGER certificate_no_delete before delete on certificate begin select raise(abort, 'certificate is append-only'); end;

CREATE TRIGGER certificate_no_reinsert before insert on certificate
       when exists (select 1 from certificate where id = new.id) begin select raise(abort, 'certificate is append-only'); end;

CREATE TRIGGER certificate_no_update before update on certificate begin select raise(abort, 'certificate is append-only'); end;

CREATE TRIGGER certificate_point_no_delete before delete on certificate_point begin select raise(abort, 'certificate_point is append-only'); end;

CREATE TRIGGER certificate_point_no_reinsert before insert on certificate_point
       when exists (select 1 from certificate_point where certificate_id = new.certificate_id and position = new.position) begin select raise(abort, 'certificate_point is append-only'); end;

CREATE TRIGGER certificate_point_no_update before update on certificate_point begin select raise(abort, 'certificate_point is append-only'); end;

CREATE TRIGGER class_tightening_no_delete before delete on class_tightening begin select raise(abort, 'class_tightening is append-only'); end;

CREATE TRIGGER class_tightening_no_reinsert before insert on class_tightening
       when exists (select 1 from class_tightening where event_id = new.event_id) begin select raise(abort, 'class_tightening is append-only'); end;

CREATE TRIGGER class_tightening_no_update before update on class_tightening begin select raise(abort, 'class_tightening is append-only'); end;

CREATE TRIGGER cycle_count_no_delete before delete on cycle_count begin select raise(abort, 'cycle_count is append-only'); end;

CREATE TRIGGER cycle_count_no_reinsert before insert on cycle_count
       when exists (select 1 from cycle_count where event_id = new.event_id and joint_id = new.joint_id) begin select raise(abort, 'cycle_count is append-only'); end;

CREATE TRIGGER cycle_count_no_update before update on cycle_count begin select raise(abort, 'cycle_count is append-only'); end;

CREATE TRIGGER event_attachment_no_delete before delete on event_attachment begin select raise(abort, 'event_attachment is append-only'); end;

CREATE TRIGGER event_attachment_no_reinsert before insert on event_attachment
       when exists (select 1 from event_attachment where event_id = new.event_id and attachment_hash = new.attachment_hash) begin select raise(abort, 'event_attachment is append-only'); end;

CREATE TRIGGER event_attachment_no_update before update on event_attachment begin select raise(abort, 'event_attachment is append-only'); end;

CREATE TRIGGER event_batch_no_delete before delete on event_batch begin select raise(abort, 'event_batch is append-only'); end;

CREATE TRIGGER event_batch_no_reinsert before insert on event_batch
       when exists (select 1 from event_batch where event_id = new.event_id and batch_id = new.batch_id) begin select raise(abort, 'event_batch is append-only'); end;

CREATE TRIGGER event_batch_no_update before update on event_batch begin select raise(abort, 'event_batch is append-only'); end;

CREATE TRIGGER event_joint_no_delete before delete on event_joint begin select raise(abort, 'event_joint is append-only'); end;

CREATE TRIGGER event_joint_no_reinsert before insert on event_joint
       when exists (select 1 from event_joint where event_id = new.event_id and joint_id = new.joint_id) begin select raise(abort, 'event_joint is append-only'); end;

CREATE TRIGGER event_joint_no_update before update on event_joint begin select raise(abort, 'event_joint is append-only'); end;

CREATE TRIGGER event_no_delete before delete on event begin select raise(abort, 'event is append-only'); end;

CREATE TRIGGER event_no_reinsert before insert on event
       when exists (select 1 from event where id = new.id) begin select raise(abort, 'event is append-only'); end;

CREATE TRIGGER event_no_update before update on event begin select raise(abort, 'event is append-only'); end;

CREATE TRIGGER event_person_no_delete before delete on event_person begin select raise(abort, 'event_person is append-only'); end;

CREATE TRIGGER event_person_no_reinsert before insert on event_person
       when exists (select 1 from event_person where event_id = new.event_id and person_id = new.person_id and role = new.role) begin select raise(abort, 'event_person is append-only'); end;

CREATE TRIGGER event_person_no_update before update on event_person begin select raise(abort, 'event_person is append-only'); end;

CREATE TRIGGER event_tool_no_delete before delete on event_tool begin select raise(abort, 'event_tool is append-only'); end;

CREATE TRIGGER event_tool_no_reinsert before insert on event_tool
       when exists (select 1 from event_tool where event_id = new.event_id and tool_id = new.tool_id and role = new.role) begin select raise(abort, 'event_tool is append-only'); end;

CREATE TRIGGER event_tool_no_update before update on event_tool begin select raise(abort, 'event_tool is append-only'); end;

CREATE TRIGGER job_version_no_delete before delete on job_version begin select raise(abort, 'job_version is append-only'); end;

CREATE TRIGGER job_version_no_reinsert before insert on job_version
       when exists (select 1 from job_version where event_id = new.event_id) begin select raise(abort, 'job_version is append-only'); end;

CREATE TRIGGER job_version_no_update before update on job_version begin select raise(abort, 'job_version is append-only'); end;

CREATE TRIGGER joint_attachment_no_delete before delete on joint_attachment begin select raise(abort, 'joint_attachment is append-only'); end;

CREATE TRIGGER joint_attachment_no_reinsert before insert on joint_attachment
       when exists (select 1 from joint_attachment where event_id = new.event_id) begin select raise(abort, 'joint_attachment is append-only'); end;

CREATE TRIGGER joint_attachment_no_update before update on joint_attachment begin select raise(abort, 'joint_attachment is append-only'); end;

CREATE TRIGGER origin_no_delete before delete on origin begin select raise(abort, 'origin is append-only'); end;

CREATE TRIGGER origin_no_reinsert before insert on origin
       when exists (select 1 from origin where id = new.id) begin select raise(abort, 'origin is append-only'); end;

CREATE TRIGGER origin_no_update before update on origin begin select raise(abort, 'origin is append-only'); end;

CREATE TRIGGER pass_record_no_delete before delete on pass_record begin select raise(abort, 'pass_record is append-only'); end;

CREATE TRIGGER pass_record_no_reinsert before insert on pass_record
       when exists (select 1 from pass_record where id = new.id) begin select raise(abort, 'pass_record is append-only'); end;

CREATE TRIGGER pass_record_no_update before update on pass_record begin select raise(abort, 'pass_record is append-only'); end;

CREATE TRIGGER recall_case_no_delete before delete on recall_case begin select raise(abort, 'recall_case is append-only'); end;

CREATE TRIGGER recall_case_no_reinsert before insert on recall_case
       when exists (select 1 from recall_case where id = new.id) begin select raise(abort, 'recall_case is append-only'); end;

CREATE TRIGGER recall_case_no_update before update on recall_case begin select raise(abort, 'recall_case is append-only'); end;

CREATE TRIGGER recall_closure_no_delete before delete on recall_closure begin select raise(abort, 'recall_closure is append-only'); end;

CREATE TRIGGER recall_closure_no_reinsert before insert on recall_closure
       when exists (select 1 from recall_closure where id = new.id and case_id = new.case_id) begin select raise(abort, 'recall_closure is append-only'); end;

CREATE TRIGGER recall_closure_no_update before update on recall_closure begin select raise(abort, 'recall_closure is append-only'); end;

CREATE TRIGGER recall_decision_no_delete before delete on recall_decision begin select raise(abort, 'recall_decision is append-only'); end;

CREATE TRIGGER recall_decision_no_reinsert before insert on recall_decision
       when exists (select 1 from recall_decision where event_id = new.event_id and tightening_id = new.tightening_id) begin select raise(abort, 'recall_decision is append-only'); end;

CREATE TRIGGER recall_decision_no_update before update on recall_decision begin select raise(abort, 'recall_decision is append-only'); end;

CREATE TRIGGER refusal_no_delete before delete on refusal begin select raise(abort, 'refusal is append-only'); end;

CREATE TRIGGER refusal_no_reinsert before insert on refusal
       when exists (select 1 from refusal where id = new.id) begin select raise(abort, 'refusal is append-only'); end;

CREATE TRIGGER refusal_no_update before update on refusal begin select raise(abort, 'refusal is append-only'); end;

CREATE TRIGGER request_receipt_no_delete before delete on request_receipt begin select raise(abort, 'request_receipt is append-only'); end;

CREATE TRIGGER request_receipt_no_reinsert before insert on request_receipt
       when exists (select 1 from request_receipt where key = new.key) begin select raise(abort, 'request_receipt is append-only'); end;

CREATE TRIGGER request_receipt_no_update before update on request_receipt begin select raise(abort, 'request_receipt is append-only'); end;

CREATE TRIGGER setting_no_delete before delete on setting begin select raise(abort, 'setting is append-only'); end;

CREATE TRIGGER setting_no_reinsert before insert on setting
       when exists (select 1 from setting where id = new.id) begin select raise(abort, 'setting is append-only'); end;

CREATE TRIGGER setting_no_update before update on setting begin select raise(abort, 'setting is append-only'); end;

CREATE TRIGGER setting_override_no_delete before delete on setting_override begin select raise(abort, 'setting_override is append-only'); end;

CREATE TRIGGER setting_override_no_reinsert before insert on setting_override
       when exists (select 1 from setting_override where setting_id = new.setting_id and code = new.code) begin select raise(abort, 'setting_override is append-only'); end;

CREATE TRIGGER setting_override_no_update before update on setting_override begin select raise(abort, 'setting_override is append-only'); end;

CREATE TRIGGER sign_in_no_delete before delete on sign_in begin select raise(abort, 'sign_in is append-only'); end;

CREATE TRIGGER sign_in_no_reinsert before insert on sign_in
       when exists (select 1 from sign_in where event_id = new.event_id) begin select raise(abort, 'sign_in is append-only'); end;

CREATE TRIGGER sign_in_no_update before update on sign_in begin select raise(abort, 'sign_in is append-only'); end;

CREATE TRIGGER signature_no_delete before delete on signature begin select raise(abort, 'signature is append-only'); end;

CREATE TRIGGER signature_no_reinsert before insert on signature
       when exists (select 1 from signature where id = new.id) begin select raise(abort, 'signature is append-only'); end;

CREATE TRIGGER signature_no_update before update on signature begin select raise(abort, 'signature is append-only'); end;

CREATE TRIGGER table_confirmation_no_delete before delete on table_confirmation begin select raise(abort, 'table_confirmation is append-only'); end;

CREATE TRIGGER table_confirmation_no_reinsert before insert on table_confirmation
       when exists (select 1 from table_confirmation where event_id = new.event_id and position = new.position) begin select raise(abort, 'table_confirmation is append-only'); end;

CREATE TRIGGER table_confirmation_no_update before update on table_confirmation begin select raise(abort, 'table_confirmation is append-only'); end;

CREATE TRIGGER tightening_no_delete before delete on tightening begin select raise(abort, 'tightening is append-only'); end;

CREATE TRIGGER tightening_no_reinsert before insert on tightening
       when exists (select 1 from tightening where id = new.id) begin select raise(abort, 'tightening is append-only'); end;

CREATE TRIGGER tightening_no_update before update on tightening begin select raise(abort, 'tightening is append-only'); end;

CREATE TRIGGER tightening_pass_no_delete before delete on tightening_pass begin select raise(abort, 'tightening_pass is append-only'); end;

CREATE TRIGGER tightening_pass_no_reinsert before insert on tightening_pass
       when exists (select 1 from tightening_pass where tightening_id = new.tightening_id and pass_id = new.pass_id) begin select raise(abort, 'tightening_pass is append-only'); end;

CREATE TRIGGER tightening_pass_no_update before update on tightening_pass begin select raise(abort, 'tightening_pass is append-only'); end;

CREATE TRIGGER tool_check_no_delete before delete on tool_check begin select raise(abort, 'tool_check is append-only'); end;

CREATE TRIGGER tool_check_no_reinsert before insert on tool_check
       when exists (select 1 from tool_check where id = new.id) begin select raise(abort, 'tool_check is append-only'); end;

CREATE TRIGGER tool_check_no_update before update on tool_check begin select raise(abort, 'tool_check is append-only'); end;

CREATE TRIGGER tool_move_no_delete before delete on tool_move begin select raise(abort, 'tool_move is append-only'); end;

CREATE TRIGGER tool_move_no_reinsert before insert on tool_move
       when exists (select 1 from tool_move where event_id = new.event_id and tool_id = new.tool_id) begin select raise(abort, 'tool_move is append-only'); end;

CREATE TRIGGER tool_move_no_update before update on tool_move begin select raise(abort, 'tool_move is append-only'); end;

CREATE TRIGGER tool_overload_no_delete before delete on tool_overload begin select raise(abort, 'tool_overload is append-only'); end;

CREATE TRIGGER tool_overload_no_reinsert before insert on tool_overload
       when exists (select 1 from tool_overload where event_id = new.event_id and tool_id = new.tool_id) begin select raise(abort, 'tool_overload is append-only'); end;

CREATE TRIGGER tool_overload_no_update before update on tool_overload begin select raise(abort, 'tool_overload is append-only'); end;
