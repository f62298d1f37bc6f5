-- One row per case of a known family whose cause is known and whose unit was built within a known quarter of a year.
select
    c.job_id,
    c.unit_id,
    j.customer_id,
    j.model_number,
    j.appliance_type,
    j.model_family,
    c.component,
    (year(c.opened_on) * 12 + month(c.opened_on) - 1)::integer as month,
    (year(b.built_on) * 12 + month(b.built_on) - 1)::integer as made_month
from cases as c
join int_failure_calls as j using (job_id)
cross join lateral (select j.made_from + ((j.made_to - j.made_from) // 2)::integer as built_on) as b
where j.appliance_type is not null
    and j.model_family is not null
    and c.component is not null
    and j.made_to - j.made_from <= 92
    and j.made_from <= c.opened_on
order by c.opened_on, c.job_id
