-- One row per arrow old -> new, as listed.
create table supersessions (
    old_number    varchar not null,
    new_number    varchar,                   -- null: no longer made
    effective_on  date,                      -- null: since ever
    kind          varchar not null,          -- replaces, kit_part, alternative, no_longer_made
    quantity      integer not null,          -- new pieces per old piece
    source_file   varchar not null,
    source_line   integer not null
);
