-- One row per price-list line.
create table staged_parts (
    part_raw         varchar not null,
    part_key         varchar not null,
    description      varchar,
    component        varchar,
    price            decimal(12,2),
    size_class       varchar,
    returnable_days  integer,
    warranty_days    integer,
    supplier         varchar,
    row_hash         varchar not null,
    source_order     integer not null,
    source_file      varchar not null,
    source_line      integer not null
);
