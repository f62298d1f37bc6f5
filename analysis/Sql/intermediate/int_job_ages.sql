-- One row per job of one span of days: its model, the interval in which the appliance was built, its age, and the basis
-- of both.
-- materialize: view of a day span
with coded as (
    select place, made_from, made_to, candidates, weight, made_from as likely_from, made_to as likely_to
    from int_job_build_dates
    where candidates = 1 and opened_on between getvariable('first_day') and getvariable('last_day')
    union all
    select
        place,
        min(made_from),
        max(made_to),
        max(candidates),
        max(weight),
        arg_max(made_from, (weight, made_from)),
        arg_max(made_to, (weight, made_from))
    from int_job_build_dates
    where candidates > 1 and opened_on between getvariable('first_day') and getvariable('last_day')
    group by place
),
registered as (
    select unit_id, min(made_on_from) as made_from, max(made_on_to) as made_to
    from int_register_units
    where made_on_from is not null
    group by unit_id
),
aged as (
    select unit_id, min(aged_from) as aged_from, max(aged_to) as aged_to
    from int_register_units
    where aged_from is not null
    group by unit_id
),
ways as (
    select
        e.place,
        e.job_id,
        e.opened_on,
        e.unit_id,
        e.appliance_type,
        e.brand,
        e.model_number,
        e.model_family,
        e.model_basis,
        r.made_from as register_from,
        coalesce(r.made_to, r.made_from) as register_to,
        c.made_from as code_from,
        c.made_to as code_to,
        c.candidates,
        c.weight,
        c.likely_from,
        c.likely_to,
        greatest(e.purchased_on - 365, coalesce(e.first_made, e.purchased_on - 365)) as bought_from,
        e.purchased_on as bought_to,
        coalesce(e.made_on_from, a.aged_from, e.stated_on - 365) as stated_from,
        case
            when e.made_on_from is not null then coalesce(e.made_on_to, e.made_on_from)
            when a.aged_from is not null then a.aged_to
            else least(e.stated_on + 365, e.opened_on)
        end as stated_to
    from int_build_evidence as e
    left join coded as c using (place)
    left join registered as r on r.unit_id = e.unit_id
    left join aged as a on a.unit_id = e.unit_id
    where e.opened_on between getvariable('first_day') and getvariable('last_day')
),
chosen as (
    select
        *,
        case
            when register_from <= opened_on then 'register'
            when candidates = 1 or weight >= 0.9 then 'date code'
            when bought_to <= opened_on then 'purchase date'
            when stated_from <= opened_on then 'stated'
            when candidates > 1 then 'several'
            else 'unknown'
        end as way
    from ways
),
intervals as (
    select
        *,
        case way
            when 'register' then register_from
            when 'date code' then code_from
            when 'purchase date' then least(bought_from, bought_to)
            when 'stated' then stated_from
            when 'several' then code_from
        end as made_from,
        case way
            when 'register' then register_to
            when 'date code' then code_to
            when 'purchase date' then bought_to
            when 'stated' then stated_to
            when 'several' then code_to
        end as made_to,
        case way
            when 'register' then register_from
            when 'date code' then likely_from
            when 'purchase date' then least(bought_from, bought_to)
            when 'stated' then stated_from
        end as age_from,
        case way
            when 'register' then register_to
            when 'date code' then likely_to
            when 'purchase date' then bought_to
            when 'stated' then stated_to
        end as age_to
    from chosen
)
select
    place,
    job_id,
    opened_on,
    unit_id,
    appliance_type,
    brand,
    model_number,
    model_family,
    model_basis,
    made_from,
    made_to,
    case when age_from is not null then greatest(0, round(((opened_on - age_from) + (opened_on - age_to)) / 2 / 365.25, 3)) end as age_years,
    case when made_to is not null then greatest(0, round((opened_on - made_to) / 365.25, 3)) end as age_least_years,
    case when made_from is not null then greatest(0, round((opened_on - made_from) / 365.25, 3)) end as age_most_years,
    case when way in ('date code', 'several') then round(weight, 6) when way <> 'unknown' then 1.0 end as age_chance,
    case when way = 'several' then 'several date codes' else way end as age_basis
from intervals
