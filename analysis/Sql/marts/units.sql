-- One row per appliance the shop knows, from its register or from its jobs.
with called as (
    select
        unit_id,
        last_value(model_number ignore nulls) over so_far as model_number,
        last_value(model_family ignore nulls) over so_far as model_family,
        last_value(appliance_type ignore nulls) over so_far as appliance_type,
        last_value(brand ignore nulls) over so_far as brand,
        last_value(made_from ignore nulls) over so_far as made_from,
        last_value(case when made_from is not null then made_to end ignore nulls) over so_far as made_to,
        min(opened_on) over so_far as seen_first,
        opened_on as seen_last
    from jobs
    where unit_id is not null
    window so_far as (partition by unit_id order by opened_on, job_id rows between unbounded preceding and current row)
    qualify lead(job_id) over (partition by unit_id order by opened_on, job_id) is null
),
listed as (
    select
        unit_id,
        min(model_number) as model_number,
        min(model_family) as model_family,
        min(appliance_type) as appliance_type,
        min(brand) as brand,
        min(made_on_from) as made_from,
        max(coalesce(made_on_to, made_on_from)) as made_to,
        min(aged_from) as aged_from,
        max(aged_to) as aged_to,
        min(installed_on) as installed_on,
        max(removed_on) as removed_on
    from int_register_units
    group by unit_id
)
select
    coalesce(l.unit_id, c.unit_id) as unit_id,
    coalesce(l.model_number, c.model_number) as model_number,
    coalesce(l.model_family, c.model_family) as model_family,
    coalesce(l.appliance_type, c.appliance_type) as appliance_type,
    coalesce(l.brand, c.brand) as brand,
    -- an age is told to a year or so, a date code to a month: it stands only where nothing tells more
    coalesce(l.made_from, c.made_from, l.aged_from) as made_from,
    case when l.made_from is not null then l.made_to when c.made_from is not null then c.made_to else l.aged_to end as made_to,
    l.installed_on,
    l.removed_on,
    c.seen_first,
    c.seen_last,
    l.unit_id is not null as registered
from listed as l
full join called as c on c.unit_id = l.unit_id
order by unit_id
