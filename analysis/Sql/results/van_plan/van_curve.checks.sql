-- One row per fault of van_curve: over the budget, above the bound, outside 0 to 1.
select van, budget
from van_curve
where plan_money > budget
    or plan_completion > bound_completion + 1e-9
    or best_rule_completion > bound_completion + 1e-9
    or most_used_completion > best_rule_completion + 1e-9
    or plan_completion not between 0 and 1.000001
