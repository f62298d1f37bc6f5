-- One row per job row of one source file, cleaned but not yet joined to anything.
create table staged_jobs (
    job_id            varchar not null,      -- trimmed, with the source's prefix
    opened_on         date    not null,
    closed_on         date,
    technician        varchar,
    van               varchar,
    serial_key        varchar,               -- keyed hash of brand and serial; the serial itself is never stored
    place_key         varchar,               -- keyed hash of phone, else address, else name
    customer_kind     varchar,
    appliance_type    varchar,
    brand             varchar,
    model_raw         varchar,
    model_key         varchar,               -- compact: NFKC, upper case, A-Z and 0-9 only
    made_on_from      date,                  -- stated build day or month or year, as an interval
    made_on_to        date,
    serial_candidates varchar,               -- build intervals read from the serial: from/to;from/to;... (ISO days); null: no rule or no serial
    serial_fault      varchar,               -- the serial breaks its brand's rule; why
    purchased_on      date,
    age_stated_years  double,
    complaint_text    varchar,
    complaint_kind    varchar not null,
    error_code        varchar,
    outcome           varchar not null,
    visits            integer,
    labour_minutes    double,
    updated_on        timestamp,             -- when the row was exported or last changed, where the file says
    row_hash          varchar not null,      -- of the row's mapped text: the same row again has the same hash
    source_order      integer not null,      -- position of the source in shop.json, then of the file in its pattern
    source_file       varchar not null,
    source_line       integer not null
);
