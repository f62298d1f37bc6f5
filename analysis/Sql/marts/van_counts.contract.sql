-- One row per part counted on a van.
create table van_counts (
    van          varchar not null,
    part_raw     varchar,
    part_number  varchar,                    -- current number; null: not resolved
    fitted_number varchar,                   -- catalogue number on the label
    on_hand      integer not null,
    counted_on   date,
    source_file  varchar not null,
    source_line  integer not null
);
