-- One row per model number.
create table models (
    model_number    varchar not null,
    model_family    varchar not null,
    family_basis    varchar not null,        -- listed, learned, reviewed
    base            varchar not null,        -- model number without its revision
    revision        varchar,
    appliance_type  varchar,
    brand           varchar,
    first_made      date,
    last_made       date,
    source_file     varchar,
    source_line     integer
);
