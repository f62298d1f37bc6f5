-- One row per frequent phrase of the shop's own, with the kind that it became, then one per complaint that nothing explains,
-- most frequent first. 'counted_as' is the kind that it counts as until it is answered.
with together as (
    select k.words, k.calls as times, k.complaint_kind as counted_as, null::varchar as appliance_type, k.example
    from own_complaint_kinds as k
    semi join own_phrases as p on p.words = k.words and p.complaint_kind = k.complaint_kind
    union all
    (
        select lower(trim(complaint_text)), count(*) as times, '', min(appliance_type), min(job_id)
        from jobs
        where complaint_kind = 'other' and trim(complaint_text) <> ''
        group by lower(trim(complaint_text))
        order by times desc, lower(trim(complaint_text))
        limit 2000
    )
)
select words, times, counted_as, appliance_type, example
from together
order by counted_as = '', times desc, words
