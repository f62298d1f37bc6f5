-- One row per line of a list of suppliers' own numbers.
create table staged_part_aliases (
    supplier      varchar not null,
    alias_raw     varchar not null,
    alias_key     varchar not null,
    part_raw      varchar not null,
    part_key      varchar not null,
    row_hash      varchar not null,
    source_order  integer not null,
    source_file   varchar not null,
    source_line   integer not null
);
