-- One row per share outside its interval.
select month, model_family from month_families where share not between lower and upper
