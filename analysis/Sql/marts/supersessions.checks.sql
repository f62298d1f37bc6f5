-- One row per arrow without pieces.
select old_number, new_number, quantity from supersessions where quantity < 1
