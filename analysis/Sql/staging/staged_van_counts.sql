-- One row per counted part.
create table staged_van_counts (
    van              varchar not null,
    part_raw         varchar not null,
    part_key         varchar not null,
    on_hand          integer not null,
    counted_on       date,
    row_hash         varchar not null,
    source_order     integer not null,
    source_file      varchar not null,
    source_line      integer not null
);
