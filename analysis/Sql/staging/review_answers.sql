-- The owner's answers, a table for each review list; empty where a list was not handed in.
create or replace table review_part_numbers (
    supplier     varchar,                    -- null: any supplier
    typed        varchar not null,
    typed_key    varchar not null,
    answer       varchar not null,
    answer_key   varchar,                    -- null: a new number of its own
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_collisions (
    fault_kind   varchar not null,
    subject      varchar not null,
    subject_key  varchar not null,
    answer       varchar not null,           -- the part or model number meant, or the family
    answer_key   varchar not null,
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_models (
    model_key    varchar not null,
    answer       varchar not null,           -- a listed model number, or a family
    answer_key   varchar not null,
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_components (
    description  varchar not null,           -- lower case, trimmed
    component    varchar not null,
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_appliances (
    appliance_type varchar not null,         -- a type of the shop's own
    answer         varchar not null,         -- the type that it is another name for
    source_file    varchar not null,
    source_line    integer not null
);
create or replace table review_outcomes (
    outcome_word   varchar not null,         -- lower case, trimmed; the shop's own word
    outcome        varchar not null,
    source_file    varchar not null,
    source_line    integer not null
);
create or replace table known_outcomes (
    outcome        varchar not null          -- what an answer may say
);
create or replace table known_appliance_types (
    appliance_type varchar not null          -- what an answer may say
);
create or replace table review_complaints (
    words          varchar not null,         -- lower case; the complaint kind is meant wherever they stand
    complaint_kind varchar not null,
    source_file    varchar not null,
    source_line    integer not null
);
create or replace table review_families (
    learned_family varchar not null,
    model_family   varchar not null,
    source_file    varchar not null,
    source_line    integer not null
);
create or replace table review_builds (
    job_id       varchar not null,
    answer       varchar not null,
    made_from    date,                       -- null: the answer is no year and no month
    made_to      date,
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_date_codes (
    date_code    varchar not null,           -- brand, form of its serials, and where the date stands
    answer       varchar not null,
    fault        varchar,                    -- why it cannot be used; null: it can
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table complaint_kinds (
    complaint_kind varchar not null          -- what an answer may say
);
