-- One row per source row that could not be read. The raw text stays out of the store: it is in the rejects folder only.
create table rejects (
    source_file  varchar not null,
    source_line  integer not null,
    field        varchar,
    reason_code  varchar not null,
    message      varchar not null,
    suggestion   varchar
);
