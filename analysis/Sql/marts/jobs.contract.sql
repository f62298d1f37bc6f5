-- One row per job: one customer call, one or more visits. The current version of it; older exports stay in job_history.
create table jobs (
    job_id            varchar not null,      -- with the source's prefix where one is set
    opened_on         date    not null,      -- day of the call
    closed_on         date,                  -- null: still open or not told; the day of the call where only its end is told
    closing_basis     varchar not null,      -- closing day, status, outcome, row (names a part or what was at fault in a log that does not tell the end; if nine rows in ten do, the log lists finished jobs), open, unknown
    technician        varchar,
    van               varchar,               -- as named, or what stands for it
    van_basis         varchar,               -- named (by the log, or by the settings for its technician); dealt (vans are listed, no job tells its van: in turn); technician (no van is named: the technician's jobs stand for one), one (one van for all jobs); null: no van
    unit_id           varchar,               -- keyed hash of the appliance (serial, else place and model); null: cannot be told
    customer_id       varchar,               -- keyed hash of the customer; null: unknown
    customer_kind     varchar,               -- household, contract, unknown
    appliance_type    varchar,               -- washer, dryer, dishwasher, refrigerator, range, microwave, or the shop's own word
    brand             varchar,
    model_raw         varchar,               -- as typed
    model_number      varchar,               -- from the model list, or the cleaned text where the list has none
    model_family      varchar,               -- null: unknown
    model_basis       varchar not null,      -- exact, compact, confusable, base, pattern, learned, reviewed, unknown
    made_from         date,                  -- earliest and latest possible build day
    made_to           date,
    age_years         double,                -- at opened_on, from the middle of the build interval, as known on that day; null: unknown
    age_least_years   double,                -- at opened_on, from the ends of the build interval; null: unknown
    age_most_years    double,
    age_chance        double,                -- chance of the likeliest date the serial may mean, see build_dates; 1: nothing else is possible; null: basis unknown
    age_basis         varchar not null,      -- register (a build date), date code, purchase date, stated (an age, on the job or in the register), several date codes (age_years is null), unknown
    visit_reason      varchar,               -- failure, preventive, installation, inspection; a visit that names what was at fault is a failure; null: not told, counts as a failure
    complaint_text    varchar,               -- as typed, scrubbed of personal data
    complaint_kind    varchar not null,      -- no_fill, no_drain, ... ; other: words not in the table; none: nothing typed
    error_code        varchar,
    outcome           varchar not null,      -- fixed_with_part, fixed_without_part, fixed (with or without is not recorded), part_ordered, declined, not_worth_repairing, no_fault_found, unknown
    main_component    varchar,               -- what the job turned out to need: a component (the one the shop names as at fault, else the main one fitted), or 'none'; null: not known (open, declined, not recorded)
    visits            integer,
    labour_minutes    double,
    warranty          boolean,               -- was the job under warranty; null: not told
    first_visit_done  boolean,               -- finished at the first visit; null: cannot be told
    source_file       varchar not null,
    source_line       integer not null
);
