-- One row per closed job whose need is known: what was known when it was booked, and what it needed. Where there are more
-- than $most, a share of the appliances is drawn by their identifiers, each with all its jobs.
with

every_closed as (
    select
        job_id, opened_on, closed_on, unit_id, appliance_type, brand, model_number, model_family, age_years, age_basis,
        complaint_text, complaint_kind, error_code, customer_kind, main_component
    from jobs
    where closed_on is not null and main_component is not null and closed_on >= opened_on
),

drawn as (
    select least(1, $most / count(*)) as share from every_closed
),

closed as (
    select every_closed.*
    from every_closed
    cross join drawn
    where share = 1 or md5_number_lower(coalesce(unit_id, job_id)) < share * 18446744073709551615
),

earlier as (
    select
        booked.job_id,
        string_agg(
            date_diff('day', before.closed_on, booked.opened_on) || ':' || coalesce(before.main_component, '') || ':' || before.complaint_kind,
            ' ' order by before.closed_on desc, before.job_id desc
        ) as visits
    from closed as booked
    inner join jobs as before on before.unit_id = booked.unit_id and before.closed_on < booked.opened_on
    group by booked.job_id
)

select
    closed.job_id,
    closed.opened_on,
    closed.closed_on,
    closed.unit_id,
    closed.main_component,
    closed.appliance_type,
    closed.brand,
    closed.model_number,
    closed.model_family,
    closed.age_years,
    closed.age_basis,
    closed.complaint_text,
    closed.complaint_kind,
    closed.error_code,
    closed.customer_kind,
    earlier.visits
from closed
left join earlier on earlier.job_id = closed.job_id
order by closed.opened_on, closed.job_id
