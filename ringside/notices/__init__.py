"""Before the show: each exhibitor is told number, ring and time of the dogs entered, by e-mail or on paper."""
