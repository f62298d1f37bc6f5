-- One row per share outside its interval.
select month, need from month_needs where share not between lower and upper
