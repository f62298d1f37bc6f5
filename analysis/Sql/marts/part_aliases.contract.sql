-- One row per supplier's own number for a part.
create table part_aliases (
    supplier     varchar not null,
    alias        varchar not null,
    part_number  varchar not null,
    basis        varchar not null,           -- listed, order line, reviewed
    source_file  varchar not null,
    source_line  integer not null
);
