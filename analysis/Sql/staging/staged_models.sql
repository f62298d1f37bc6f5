-- One row per model-list line.
create table staged_models (
    model_raw         varchar not null,
    model_key         varchar not null,
    model_pattern     varchar,               -- LIKE patterns over model keys, divided by |; null: no wildcard
    model_family      varchar,               -- null: to be learned
    appliance_type    varchar,
    brand             varchar,
    first_made        date,
    last_made         date,
    row_hash          varchar not null,
    source_order      integer not null,
    source_file       varchar not null,
    source_line       integer not null
);
