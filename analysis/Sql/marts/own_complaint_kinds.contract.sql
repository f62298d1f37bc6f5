-- One row per frequent phrase of the shop's complaints that no table reads.
create table own_complaint_kinds (
    words           varchar not null,        -- the phrase
    complaint_kind  varchar not null,        -- the kind that it became, or that the owner gave it
    calls           bigint not null,
    example         varchar                  -- a complaint that says it, without what is personal
);
