-- One row per part line fitted on a job.
create table job_parts (
    job_id       varchar not null,
    line         integer not null,
    part_raw     varchar,
    part_number  varchar,                    -- current number; null: not resolved (see review list)
    part_basis   varchar not null,           -- exact, compact, confusable, alias, unresolved
    fitted_number varchar,                   -- the catalog number as fitted, before supersession
    component    varchar,                    -- null: description and catalog do not say
    quantity     integer not null,
    from_van     boolean,                    -- null: not recorded
    supplier     varchar,                    -- who supplied the fitted part; null: cannot be told
    unit_price   decimal(12,2),
    source_file  varchar not null,
    source_line  integer not null
);
