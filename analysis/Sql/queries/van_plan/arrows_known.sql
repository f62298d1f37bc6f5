-- Sets the day whose arrows old -> new are known to the cross-reference.
set variable arrows_as_of = $day::date
