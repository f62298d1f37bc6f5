-- One row per case that may be about a listed machine although its job does not tell which: what the job tells of the
-- machine, and the chance that it is a listed one.
-- Such a case tells no machine, or one that is not listed although its customer has a listed one of that type; it came
-- while machines of its type, and of its family where it tells one, were on the register; and its customer is of the
-- register's kind or of a kind not told.
-- The chance is the share of listed machines among the cases of the same type, kind of customer and knowledge of the
-- customer that do tell their machine; where fewer than ten do, among those of the type; 1 where none tells against it. A
-- machine that is told and not listed has the chance 0.
with log as (
    from int_log_window
),
listed_customers as (
    select distinct j.customer_id, u.appliance_type
    from jobs as j
    join units as u using (unit_id)
    cross join log
    where u.registered and j.customer_id is not null and j.opened_on <= log.last_day
),
listed as (
    select appliance_type, model_family, min(starts_on) as starts_on, max(ends_before) as ends_before
    from unit_windows
    where basis = 'register_unit_years'
    group by grouping sets ((appliance_type, model_family), (appliance_type))
),
told as (
    select
        c.job_id,
        c.component,
        c.unit_id,
        j.opened_on,
        j.appliance_type,
        j.brand,
        j.model_family,
        coalesce(j.opened_on - b.born_on, (j.age_years * 365.25)::integer) as age_days,
        j.complaint_kind,
        coalesce(j.customer_kind, 'unknown') as customer_kind,
        coalesce(u.registered, false) as is_listed,
        k.customer_id is not null as of_listed_customer
    from cases as c
    join jobs as j using (job_id)
    cross join register_machines as m
    left join units as u on u.unit_id = c.unit_id
    left join int_unit_births as b on b.unit_id = c.unit_id
    left join listed_customers as k on k.customer_id = j.customer_id and k.appliance_type = j.appliance_type
    where j.appliance_type in (select appliance_type from listed)
        and (m.whose not in ('contract', 'household') or coalesce(j.customer_kind, 'unknown') in ('unknown', m.whose))
),
chances as (
    select
        appliance_type,
        customer_kind,
        of_listed_customer,
        count(*) filter (where is_listed) as listed_cases,
        count(*) as told_cases,
        sum(count(*) filter (where is_listed)) over (partition by appliance_type) as listed_of_type,
        sum(count(*)) over (partition by appliance_type) as told_of_type
    from told
    where unit_id is not null
    group by appliance_type, customer_kind, of_listed_customer
),
types as (
    select distinct appliance_type, listed_of_type, told_of_type from chances
)
select
    t.job_id,
    t.component,
    t.opened_on,
    t.appliance_type,
    t.brand,
    t.model_family,
    t.age_days,
    t.complaint_kind,
    -- a decimal, so that sums do not depend on their order
    (case
        when t.unit_id is not null then 0
        when s.told_cases >= 10 then s.listed_cases / s.told_cases
        when a.told_of_type >= 10 then a.listed_of_type / a.told_of_type
        else 1
    end)::decimal(9, 6) as chance
from told as t
left join listed as y on y.appliance_type = t.appliance_type and y.model_family is null
left join listed as f on f.appliance_type = t.appliance_type and f.model_family = t.model_family
left join listed as n on n.appliance_type = t.appliance_type and n.model_family = 'unknown'
left join chances as s
    on s.appliance_type = t.appliance_type and s.customer_kind = t.customer_kind and s.of_listed_customer = t.of_listed_customer
left join types as a on a.appliance_type = t.appliance_type
where not t.is_listed
    and (t.unit_id is null or t.of_listed_customer)
    and case
        when t.model_family is null then t.opened_on >= y.starts_on and t.opened_on < y.ends_before
        else t.opened_on >= f.starts_on and t.opened_on < f.ends_before
            or t.opened_on >= n.starts_on and t.opened_on < n.ends_before
    end
order by t.job_id
