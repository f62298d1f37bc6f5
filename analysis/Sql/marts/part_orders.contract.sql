-- One row per order line.
create table part_orders (
    order_id           varchar not null,
    line               integer not null,
    supplier           varchar not null,
    ordered_on         date not null,
    received_on        date,                 -- null: not received yet
    part_raw           varchar,
    part_number        varchar,              -- current number; null: not resolved
    part_basis         varchar not null,     -- exact, compact, confusable, alias, unresolved
    component          varchar,
    quantity           integer not null,
    unit_cost          decimal(12,2),
    job_id             varchar,              -- null: bought for stock
    returned_quantity  integer,              -- pieces sent back; null: the file does not tell
    return_reason      varchar,
    source_file        varchar not null,
    source_line        integer not null
);
