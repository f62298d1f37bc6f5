-- One row: lines of jobs that charge for work, travel or a fee, with their commonest words.
with worded as (
    select lower(trim(words)) as words, count(*) as times from int_charge_lines group by all
)
select
    coalesce(sum(times), 0)::bigint as lines,
    coalesce(string_agg('''' || words || '''', ', ' order by times desc, words) filter (place <= 3), '') as examples
from (select *, row_number() over (order by times desc, words) as place from worded)
