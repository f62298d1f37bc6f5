-- One row per register line.
create table staged_units (
    serial_key        varchar,
    place_key         varchar,
    serial_candidates varchar,
    appliance_type    varchar,
    brand             varchar,
    model_raw         varchar,
    model_key         varchar,
    made_on_from      date,
    made_on_to        date,
    installed_on      date,
    removed_on        date,
    row_hash          varchar not null,
    source_order      integer not null,
    source_file       varchar not null,
    source_line       integer not null
);
