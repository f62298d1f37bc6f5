-- One row per source row that the reader could not use.
create or replace table rejected_rows (
    source_order integer not null,
    source_file  varchar not null,
    source_line  integer not null,
    field        varchar,
    reason_code  varchar not null,
    message      varchar not null,
    suggestion   varchar
);
