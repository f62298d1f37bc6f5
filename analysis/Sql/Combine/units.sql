-- One row per appliance the shop knows, from its register or from its jobs.
with called as (
    select
        j.unit_id,
        last(j.model_number order by j.opened_on, j.job_id) filter (j.model_number is not null) as model_number,
        last(j.model_family order by j.opened_on, j.job_id) filter (j.model_family is not null) as model_family,
        last(j.appliance_type order by j.opened_on, j.job_id) filter (j.appliance_type is not null) as appliance_type,
        last(j.brand order by j.opened_on, j.job_id) filter (j.brand is not null) as brand,
        last(j.made_from order by j.opened_on, j.job_id) filter (j.made_from is not null) as made_from,
        last(j.made_to order by j.opened_on, j.job_id) filter (j.made_from is not null) as made_to,
        min(j.opened_on) as seen_first,
        max(j.opened_on) as seen_last
    from jobs as j
    where j.unit_id is not null
    group by j.unit_id
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
        min(installed_on) as installed_on,
        max(removed_on) as removed_on
    from register_rows
    group by unit_id
)
select
    coalesce(l.unit_id, c.unit_id) as unit_id,
    coalesce(l.model_number, c.model_number) as model_number,
    coalesce(l.model_family, c.model_family) as model_family,
    coalesce(l.appliance_type, c.appliance_type) as appliance_type,
    coalesce(l.brand, c.brand) as brand,
    coalesce(l.made_from, c.made_from) as made_from,
    coalesce(l.made_to, c.made_to) as made_to,
    l.installed_on,
    l.removed_on,
    c.seen_first,
    c.seen_last,
    l.unit_id is not null as registered
from listed as l
full join called as c on c.unit_id = l.unit_id
order by unit_id
