-- One row per month of the call and model family: its failure calls, of those whose family is known, and what they needed most.
with known as (
    select date_trunc('month', opened_on)::date as month, model_family, appliance_type, brand, main_component
    from int_failure_calls
    where model_family is not null and opened_on <= (select last_day from int_log_window)
),
needs as (
    select month, model_family, main_component, count(*) as calls
    from known
    where main_component not in ('none', 'other_part')
    group by month, model_family, main_component
),
-- parts tied for first place are not leaders
top_needs as (
    select month, model_family, min(main_component) as top_component
    from (select month, model_family, main_component from needs qualify calls = max(calls) over (partition by month, model_family))
    group by month, model_family
    having count(*) = 1
)
select
    k.month,
    k.model_family,
    min(k.appliance_type) as appliance_type,
    min(k.brand) as brand,
    count(*) as calls,
    sum(count(*)) over (partition by k.month)::bigint as family_known,
    min(t.top_component) as top_component
from known as k
left join top_needs as t
    on k.month = t.month and k.model_family = t.model_family
group by k.month, k.model_family
order by k.month, calls desc, k.model_family
