-- One row per component, appliance type, family ('all': every family of the type) and age in days: registered
-- appliances whose watching began or ended at it, and first failures of the component seen at it.
with watched as (
    select unit_id, appliance_type, model_family, entry_days, exit_days
    from unit_ages
    where basis = 'register' and left_out is null
),
first_failures as (
    select w.unit_id, w.appliance_type, w.model_family, w.exit_days, f.component, min(f.age_days) as age_days
    from unit_failures as f
    join watched as w using (unit_id)
    where f.age_days > w.entry_days and f.age_days <= w.exit_days
    group by all
),
moves as (
    select appliance_type, model_family, entry_days as age_days, 1 as entries, 0 as exits
    from watched
    union all
    select appliance_type, model_family, exit_days, 0, 1
    from watched
),
counted as (
    select
        appliance_type,
        coalesce(model_family, 'all') as model_family,
        age_days,
        sum(entries)::bigint as entries,
        sum(exits)::bigint as exits
    from moves
    group by grouping sets ((appliance_type, model_family, age_days), (appliance_type, age_days))
),
-- An appliance whose component fails leaves that component's ledger at the failure instead of at the end of watching.
shifts as (
    select component, appliance_type, model_family, age_days, 1 as exits, 1 as failures
    from first_failures
    union all
    select component, appliance_type, model_family, exit_days, -1, 0
    from first_failures
),
shifted as (
    select
        component,
        appliance_type,
        coalesce(model_family, 'all') as model_family,
        age_days,
        sum(exits)::bigint as exits,
        sum(failures)::bigint as failures
    from shifts
    group by grouping sets ((component, appliance_type, model_family, age_days), (component, appliance_type, age_days))
),
curves as (
    select distinct component, appliance_type, model_family
    from shifted
)
select
    component,
    appliance_type,
    model_family,
    age_days,
    sum(entries)::bigint as entries,
    sum(exits)::bigint as exits,
    sum(failures)::bigint as failures
from (
    select c.component, c.appliance_type, c.model_family, m.age_days, m.entries, m.exits, 0 as failures
    from curves as c
    join counted as m using (appliance_type, model_family)
    union all
    select component, appliance_type, model_family, age_days, 0, exits, failures
    from shifted
)
group by all
having entries <> 0 or exits <> 0 or failures <> 0
order by component, appliance_type, model_family, age_days
