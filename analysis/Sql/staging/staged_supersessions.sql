-- One row per supersession line.
create table staged_supersessions (
    old_raw       varchar not null,
    old_key       varchar not null,
    new_raw       varchar,
    new_key       varchar,
    effective_on  date,
    kind          varchar not null,
    quantity      integer not null,
    row_hash      varchar not null,
    source_order  integer not null,
    source_file   varchar not null,
    source_line   integer not null
);
