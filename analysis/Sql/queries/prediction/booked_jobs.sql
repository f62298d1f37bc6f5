-- One row per job that is still open: what was known when it was booked.
with

booked as (
    select
        job_id, opened_on, unit_id, appliance_type, brand, model_number, model_family, age_years, age_basis,
        complaint_text, complaint_kind, error_code, customer_kind, van, outcome
    from jobs
    where closed_on is null
),

earlier as (
    select
        booked.job_id,
        string_agg(
            date_diff('day', before.closed_on, booked.opened_on) || ':' || coalesce(before.main_component, '') || ':' || before.complaint_kind,
            ' ' order by before.closed_on desc, before.job_id desc
        ) as visits
    from booked
    inner join jobs as before on before.unit_id = booked.unit_id and before.closed_on < booked.opened_on
    group by booked.job_id
)

select
    booked.job_id,
    booked.opened_on,
    booked.van,
    booked.outcome,
    booked.unit_id,
    booked.appliance_type,
    booked.brand,
    booked.model_number,
    booked.model_family,
    booked.age_years,
    booked.age_basis,
    booked.complaint_text,
    booked.complaint_kind,
    booked.error_code,
    booked.customer_kind,
    earlier.visits
from booked
left join earlier on earlier.job_id = booked.job_id
order by booked.opened_on, booked.job_id
