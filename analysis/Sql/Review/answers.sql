-- The owner's answers, a table for each review list; empty where a list was not handed in.
create or replace table review_part_numbers (
    supplier     varchar,                    -- null: whoever typed it
    typed        varchar not null,
    typed_key    varchar not null,
    answer_key   varchar,                    -- null: a number of its own, new to the catalogue
    source_file  varchar not null,
    source_line  integer not null
);
create or replace table review_components (
    description  varchar not null,           -- lower case, trimmed
    component    varchar not null
);
create or replace table review_complaints (
    words          varchar not null,         -- lower case; the complaint kind is meant wherever they stand
    complaint_kind varchar not null
);
create or replace table review_families (
    learned_family varchar not null,
    model_family   varchar not null
);
create or replace table review_builds (
    job_id       varchar not null,
    made_from    date not null,
    made_to      date not null
);
