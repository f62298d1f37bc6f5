-- One row per rule learned from dated serials: how a brand writes the build date into serials of one form.
create table date_codes (
    brand                  varchar not null, -- as most often typed
    serial_form            varchar not null, -- A: a letter, 9: a digit
    date_code              varchar not null, -- where the date stands, in words
    rule                   varchar not null, -- the finding in one sentence
    in_use                 boolean not null, -- serials are read by it
    basis                  varchar not null, -- proven, approved (by the owner), asked, rejected (by the owner)
    confirming             integer not null, -- appliances whose dates agree with it
    contradicting          integer not null, -- appliances whose dates do not
    confirming_examples    varchar,          -- a few of them, everything but the code masked
    contradicting_examples varchar,
    jobs_aged              bigint not null,  -- jobs of the brand whose age comes from a date code
    pattern                varchar not null, -- the rule as a line of serial-codes.csv, from here on
    year_letters           varchar,          -- null: digits
    year_of_first          varchar,
    cycle_years            varchar,
    month_letters          varchar,          -- null: digits, or no month
    weeks                  varchar           -- null: no week
);
