-- One row per line of a list that says which part fits which model or family.
create table staged_fitments (
    model_raw     varchar,
    model_key     varchar,                   -- may hold a printed wildcard, see model_pattern
    model_pattern varchar,                   -- LIKE patterns over model keys, divided by |; null: no wildcard
    model_family  varchar,
    part_raw      varchar not null,
    part_key      varchar not null,
    quantity      integer not null,
    row_hash      varchar not null,
    source_order  integer not null,
    source_file   varchar not null,
    source_line   integer not null
);
