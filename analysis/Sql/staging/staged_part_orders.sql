-- One row per order line of one source file.
create table staged_part_orders (
    order_id           varchar not null,
    supplier           varchar not null,
    ordered_on         date not null,
    received_on        date,
    part_raw           varchar,
    part_key           varchar,
    other_raw          varchar,              -- second number on the line: the maker's beside the supplier's
    other_key          varchar,
    description        varchar,
    component          varchar,
    quantity           integer not null,
    unit_cost          decimal(12,2),
    job_id             varchar,
    returned_quantity  integer not null,
    return_reason      varchar,
    updated_on         timestamp,
    row_hash           varchar not null,
    source_order       integer not null,
    source_file        varchar not null,
    source_line        integer not null
);
