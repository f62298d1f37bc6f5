-- One row per month and need.
select month, need, calls, cause_known from month_need_counts order by month, calls desc, need
