"""What entries cost, what exhibitors owe, what they have paid."""
