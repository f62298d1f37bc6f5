-- One row per part counted on a van or on the shop's shelf.
create table van_counts (
    van          varchar,                    -- null: the shelf
    part_raw     varchar,
    part_number  varchar,                    -- current number; null: not resolved
    fitted_number varchar,                   -- catalog number on the label
    on_hand      integer not null,
    counted_on   date,
    source_file  varchar not null,
    source_line  integer not null
);
