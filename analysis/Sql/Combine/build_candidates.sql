-- One row per job and build interval its serial may mean, after launch, stop, day of the call, plausible age and
-- what else was said have narrowed it; with its weight.
with parts as (
    select
        job_id, unit_id, opened_on, appliance_type, first_made, last_made, purchased_on, made_on_from, made_on_to, stated_on,
        unnest(string_split(serial_candidates, ';')) as text
    from build_evidence
    where serial_candidates is not null
),
spans as (
    select * exclude (text), split_part(text, '/', 1)::date as made_from, split_part(text, '/', 2)::date as made_to
    from parts
),
possible as (
    select
        s.*,
        -- a purchase, a stated build date or a stated age decides between candidates, never against all of them
        coalesce(s.made_from <= s.purchased_on and s.made_to >= s.purchased_on - interval 4 years, false)
            or coalesce(s.made_from <= s.made_on_to and s.made_to >= s.made_on_from, false)
            or coalesce(abs(s.made_from - s.stated_on) <= greatest(730, (s.opened_on - s.stated_on) * 0.35), false) as supported
    from spans as s
    where s.made_from <= s.opened_on
        -- lists round launch and stop to a month
        and (s.first_made is null or s.made_to >= s.first_made - 31)
        and (s.last_made is null or s.made_from <= s.last_made + 31)
        and s.made_to >= s.opened_on - to_years(getvariable('oldest_years'))
),
kept as (
    select
        * exclude (supported),
        (((opened_on - made_from) + (opened_on - made_to)) / 2 / 365.25)::integer as age
    from possible
    qualify supported or not bool_or(supported) over (partition by job_id)
),
counted as (
    select *, count(*) over (partition by job_id) as candidates from kept
),
certain as (
    select appliance_type, age, count(*) as units
    from counted
    where candidates = 1
    group by appliance_type, age
),
weighed as (
    select c.*, coalesce(p.units, 0) + 0.5 as chance
    from counted as c
    left join certain as p on p.appliance_type is not distinct from c.appliance_type and p.age = c.age
)
select
    job_id, unit_id, opened_on, made_from, made_to, candidates,
    chance / sum(chance) over (partition by job_id) as weight
from weighed
