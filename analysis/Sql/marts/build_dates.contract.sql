-- One row per job and build interval that its appliance's serial may mean, with the chance that it is the right one.
create table build_dates (
    job_id       varchar not null,
    unit_id      varchar,                    -- null: cannot be told
    made_from    date not null,
    made_to      date not null,
    candidates   integer not null,           -- intervals of this job; 1: the date is certain
    weight       double not null,            -- adds up to 1 over a job; from the ages of units of the type whose date is certain
    basis        varchar not null            -- serial, reviewed (the owner's answer)
);
