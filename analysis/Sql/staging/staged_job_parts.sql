-- One row per part line of one source file; a jobs row with part columns gives several.
create table staged_job_parts (
    job_id           varchar not null,
    part_raw         varchar,
    part_key         varchar,
    description      varchar,
    component        varchar,                -- from the description's words; null: they do not say
    quantity         integer not null,
    from_van         boolean,
    unit_price       decimal(12,2),
    group_no         integer not null,       -- position within the row, from 1
    row_hash         varchar,                -- null: came with a jobs row, which has its own
    updated_on       timestamp,              -- null too where it came with a jobs row, which has its own
    with_job_row     boolean not null,       -- true: came with a jobs row and stands or falls with it
    source_order     integer not null,
    source_file      varchar not null,
    source_line      integer not null
);
