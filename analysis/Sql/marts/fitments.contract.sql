-- One row per model family and part: listed for it, or seen on its jobs.
create table fitments (
    model_family  varchar not null,
    part_number   varchar not null,          -- current number
    component     varchar,
    basis         varchar not null,          -- listed, seen, both
    times_seen    bigint not null,
    typical_quantity integer not null,
    last_seen     date
);
