-- One row per appliance whose serial still means several build dates; its newest call.
with open_ones as (
    select c.job_id, c.unit_id, string_agg(
        strftime(c.made_from, '%Y-%m') || ' (' || round(100 * c.weight)::integer || ' %)', ', ' order by c.made_from
    ) as candidates
    from int_build_candidates as c
    where c.candidates > 1
    group by c.job_id, c.unit_id
)
select j.job_id, j.opened_on, j.brand, j.model_raw as model, o.candidates
from open_ones as o
join jobs as j using (job_id)
where j.age_basis not in ('register', 'date code')
qualify row_number() over (partition by coalesce(o.unit_id, o.job_id) order by j.opened_on desc, j.job_id) = 1
order by j.job_id
