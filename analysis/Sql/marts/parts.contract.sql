-- One row per catalog part number, current or superseded.
create table parts (
    part_number      varchar not null,
    current_number   varchar not null,       -- itself when nothing replaces it
    description      varchar,
    component        varchar,
    price            decimal(12,2),          -- what the shop pays; latest known
    size_class       varchar,                -- small, medium, large, bulky
    space_units      double not null,        -- small 1, medium 3, large 8, bulky 25 unless the shop says otherwise
    returnable_days  integer,                -- null: not known
    warranty_days    integer,
    supplier         varchar,                -- who lists it; null: not known
    available        boolean not null,       -- false: no longer made and nothing replaces it
    basis            varchar not null default 'listed', -- listed, reviewed (the owner called it new), seen (no price list: learned from order and job lines)
    source_file      varchar not null,
    source_line      integer not null
);
