-- One row per job row that a newer export replaced.
create table job_history (
    job_id       varchar not null,
    opened_on    date,
    closed_on    date,
    outcome      varchar,
    replaced_by_file varchar not null,
    replaced_by_line integer not null,
    source_file  varchar not null,
    source_line  integer not null
);
