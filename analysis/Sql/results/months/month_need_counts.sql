-- One row per month of the call and need: failure calls that turned out to need it, of those whose cause is known.
with known as (
    select date_trunc('month', opened_on)::date as month, main_component as need
    from int_failure_calls
    where main_component is not null and opened_on <= (select last_day from int_log_window)
)
select
    month,
    need,
    count(*) as calls,
    sum(count(*)) over (partition by month)::bigint as cause_known
from known
group by month, need
order by month, calls desc, need
