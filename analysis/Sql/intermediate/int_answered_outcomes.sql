-- One row per word of the shop's own for an outcome whose meaning the owner told.
select outcome_word, min(outcome) as outcome
from review_outcomes
where outcome in ('fixed_with_part', 'fixed_without_part', 'fixed', 'part_ordered', 'declined', 'not_worth_repairing', 'no_fault_found')
group by outcome_word
having count(distinct outcome) = 1
order by outcome_word
