-- One row per way in which part lines tell their part: number, model, words, nothing.
select told_by, count(*) as lines
from told_part_lines()
group by told_by
order by told_by
