-- One row per job: what was known of it when it was booked and, once it is closed, what it needed.
-- $is_open: the jobs that are still open, else the closed ones whose need is known. Where there are more than $most
-- (null: no limit), a share of the appliances is drawn by their identifiers, each with all its jobs.
with asked as (
    select
        job_id, opened_on, closed_on, unit_id, main_component, appliance_type, brand, model_number, model_family, age_years,
        age_basis, complaint_text, complaint_kind, error_code, customer_kind
    from jobs
    where coalesce(visit_reason, 'failure') = 'failure' and case
        when $is_open::boolean then coalesce(closing_basis = 'open', closed_on is null)
        else closed_on is not null and main_component is not null and closed_on >= opened_on
    end
),
drawn as (
    select least(1, $most / count(*)) as share from asked
),
called as (
    select asked.*
    from asked
    cross join drawn
    where share = 1 or md5_number_lower(coalesce(unit_id, job_id)) < share * 18446744073709551615
),
earlier as (
    select
        called.job_id,
        string_agg(
            date_diff('day', before.closed_on, called.opened_on) || ':' || coalesce(before.main_component, '') || ':' || before.complaint_kind,
            ' ' order by before.closed_on desc, before.job_id desc
        ) as visits
    from called
    join jobs as before on before.unit_id = called.unit_id and before.closed_on < called.opened_on
    group by called.job_id
)
select
    called.job_id,
    called.opened_on,
    called.closed_on,
    called.unit_id,
    called.main_component,
    called.appliance_type,
    called.brand,
    called.model_number,
    called.model_family,
    called.age_years,
    called.age_basis,
    called.complaint_text,
    called.complaint_kind,
    called.error_code,
    called.customer_kind,
    earlier.visits
from called
left join earlier on earlier.job_id = called.job_id
order by called.opened_on, called.job_id
