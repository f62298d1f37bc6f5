-- One row per appliance the shop knows, from its register or from its jobs.
create table units (
    unit_id        varchar not null,
    model_number   varchar,
    model_family   varchar,
    appliance_type varchar,
    brand          varchar,
    made_from      date,
    made_to        date,
    installed_on   date,
    removed_on     date,                     -- register only; null: still there or not known
    seen_first     date,                     -- first job
    seen_last      date,                     -- last job
    registered     boolean not null          -- a register lists it, so its years count whether it failed or not
);
