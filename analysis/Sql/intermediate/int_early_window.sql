-- One row: the days after a repair within which a part that has to be replaced again has failed early.
select 90 as days
