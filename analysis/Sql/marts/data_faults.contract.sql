-- One row per contradiction found in the data itself (supersession cycles, impossible dates, colliding model numbers, job numbers that stand for two jobs).
create table data_faults (
    fault_kind   varchar not null,
    subject      varchar not null,
    message      varchar not null,
    source_file  varchar,
    source_line  integer
);
