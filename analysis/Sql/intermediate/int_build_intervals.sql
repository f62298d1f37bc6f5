-- One row per job and build interval that its serial allows, after checking it against the model's production years,
-- the day of the call, a plausible age and whatever else was said.
with parts as (
    select
        place, job_id, unit_id, opened_on, appliance_type, first_made, last_made, purchased_on, made_on_from, made_on_to, stated_on,
        contains(serial_candidates, ';') as is_several,
        unnest(string_split(serial_candidates, ';')) as text
    from int_build_evidence
    where serial_candidates is not null
),
spans as (
    select * exclude (text), split_part(text, '/', 1)::date as made_from, split_part(text, '/', 2)::date as made_to
    from parts
),
possible as (
    select
        place, job_id, unit_id, opened_on, appliance_type, made_from, made_to, is_several,
        (((opened_on - made_from) + (opened_on - made_to)) / 2 / 365.25)::integer as age,
        -- a purchase date, a stated build date or a stated age chooses among candidates; it never rules out all of them
        coalesce(made_from <= purchased_on and made_to >= purchased_on - interval 4 years, false)
            or coalesce(made_from <= made_on_to and made_to >= made_on_from, false)
            or coalesce(abs(made_from - stated_on) <= greatest(730, (opened_on - stated_on) * 0.35), false) as supported
    from spans
    where made_from <= opened_on
        -- lists round the first and last day of production to a month
        and (first_made is null or made_to >= first_made - 31)
        and (last_made is null or made_from <= last_made + 31)
        and made_to >= opened_on - to_years(getvariable('oldest_years'))
),
kept as (
    from possible
    where is_several
    qualify supported or not bool_or(supported) over (partition by place)
)
select place, job_id, unit_id, opened_on, appliance_type, made_from, made_to, age, count(*) over (partition by place) as candidates
from kept
union all
select place, job_id, unit_id, opened_on, appliance_type, made_from, made_to, age, 1
from possible
where not is_several
