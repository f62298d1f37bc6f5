-- One row per job that is booked and not yet seen on the evening of $day, as the office knew it then.
with

booked as (
    select *
    from jobs
    where van is not null
        and opened_on <= $day::date
        -- A call left open for longer is forgotten in the log rather than still to come.
        and opened_on > $day::date - $days::integer
        and (closed_on is null or closed_on > $day::date)
        -- A part ordered for the job comes by itself and is not asked of the van.
        and outcome <> 'part_ordered'
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
    booked.van,
    booked.opened_on,
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
